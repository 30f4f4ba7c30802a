// A plot to take away: as a drawing, as a picture, or as the numbers behind it; and the numbers as a table on the page, for
// whoever reads better than looks.

import { tell } from "./api.js";
import { html } from "./draw.js";

const KEPT = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-dasharray", "stroke-opacity", "stroke-linejoin", "opacity", "font-size", "font-weight"];
const FONT = "Archivo, 'Helvetica Neue', 'Liberation Sans', sans-serif";
const TIMES = 2;
const MOST_ROWS = 400;

/**
 * Puts the ways to take a plot under it.
 *
 * @param into    where
 * @param name    of the files
 * @param drawing the plot's svg element
 * @param numbers {columns, rows} as drawn
 */
export function takeAway(into, name, drawing, numbers) {
  const ways = [["SVG", () => save(name + ".svg", new Blob([picture(drawing).text], { type: "image/svg+xml" }))], ["PNG", () => png(name, drawing)],
    ["CSV", () => save(name + ".csv", new Blob([csv(numbers)], { type: "text/csv" }))],
    ["JSON", () => save(name + ".json", new Blob([json(numbers)], { type: "application/json" }))]];
  const open = into.querySelector("details")?.open ?? false;
  into.replaceChildren(html("p", { class: "row ways-out" }, html("span", { class: "quiet" }, "Take it as"), ...ways.map(([kind, act]) => {
    const button = html("button", { type: "button", class: "small", "data-take": kind.toLowerCase() }, kind);
    button.addEventListener("click", act);
    return button;
  })), html("details", { open }, html("summary", {}, "The numbers"), table(numbers, name)));
}

/** The numbers as a file's text: one line for each row, numbers in full. */
export function csv({ columns, rows }) {
  return [columns, ...rows].map(row => row.map(quoted).join(",")).join("\r\n") + "\r\n";
}

function quoted(value) {
  const text = value == null ? "" : String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

function json({ columns, rows }) {
  return JSON.stringify(rows.map(row => Object.fromEntries(columns.map((column, i) => [column, row[i] === "" ? null : row[i]]))), null, 1);
}

/** The drawing by itself, with what the page's style sheets say written into it. */
export function picture(drawing) {
  const copy = drawing.cloneNode(true);
  const from = [drawing, ...drawing.querySelectorAll("*")];
  [copy, ...copy.querySelectorAll("*")].forEach((element, i) => {
    const style = getComputedStyle(from[i]);
    for (const key of KEPT) element.setAttribute(key, style.getPropertyValue(key));
    for (const gone of ["class", "id", "role", "aria-labelledby"]) element.removeAttribute(gone);
  });
  const [width, height] = drawing.getAttribute("viewBox").split(" ").slice(2).map(Number);
  const ground = document.createElementNS("http://www.w3.org/2000/svg", "rect");
  for (const [key, value] of Object.entries({ x: -12, y: -12, width: width + 24, height: height + 24, fill: getComputedStyle(drawing.closest(".card")).backgroundColor })) ground.setAttribute(key, value);
  copy.prepend(ground);
  copy.setAttribute("viewBox", `-12 -12 ${width + 24} ${height + 24}`);
  copy.setAttribute("width", width + 24);
  copy.setAttribute("height", height + 24);
  copy.setAttribute("font-family", FONT);
  return { text: new XMLSerializer().serializeToString(copy), width: width + 24, height: height + 24 };
}

async function png(name, drawing) {
  const { text, width, height } = picture(drawing);
  const image = new Image();
  image.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(text);
  try {
    await image.decode();
  } catch {
    tell("This browser cannot make a picture of it. The SVG can be had.", "refused");
    return;
  }
  const canvas = html("canvas", { width: width * TIMES, height: height * TIMES });
  canvas.getContext("2d").drawImage(image, 0, 0, width * TIMES, height * TIMES);
  canvas.toBlob(blob => save(name + ".png", blob), "image/png");
}

function save(file, blob) {
  const link = html("a", { href: URL.createObjectURL(blob), download: file });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

function table({ columns, rows }, name) {
  const shown = rows.slice(0, MOST_ROWS);
  const value = each => typeof each === "number" && !Number.isInteger(each) ? (Math.abs(each) < 10 ? each.toFixed(3) : each.toFixed(1)) : each ?? "";
  return html("div", { class: "scroll", tabindex: "0", role: "group", "aria-label": "The numbers of " + name }, html("table", { class: "figures" },
    html("thead", {}, html("tr", {}, ...columns.map(column => html("th", { scope: "col" }, column.replaceAll("_", " "))))),
    html("tbody", {}, ...shown.map(row => html("tr", {}, ...row.map(each => html("td", {}, String(value(each)))))))));
}
