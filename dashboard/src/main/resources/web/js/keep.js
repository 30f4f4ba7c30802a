// A drawing to take along: as SVG, which stands by itself, or as PNG, at twice its size on the page.

import { html } from "./draw.js";

const STYLE = ["fill", "fill-opacity", "stroke", "stroke-width", "stroke-dasharray", "stroke-linecap", "stroke-linejoin", "font-size",
  "font-weight", "font-family", "text-anchor", "opacity"];
const SVG = "http://www.w3.org/2000/svg";

/** Two buttons that save a drawing. @param name of the file, without an ending; asked when one is touched */
export function keepers(drawing, name) {
  const asSvg = html("button", { type: "button" }, "Drawing (SVG)");
  const asPng = html("button", { type: "button" }, "Drawing (PNG)");
  asSvg.addEventListener("click", () => save(new Blob([text(drawing)], { type: "image/svg+xml" }), name() + ".svg"));
  asPng.addEventListener("click", async () => save(await png(drawing), name() + ".png"));
  return [asSvg, asPng];
}

/** The drawing as a file of its own: what the page's sheets say of it is written into it, and its ground filled. */
export function text(drawing) {
  const [, , width, height] = drawing.getAttribute("viewBox").split(" ").map(Number);
  const copy = drawing.cloneNode(true);
  const originals = drawing.querySelectorAll("*");
  copy.querySelectorAll("*").forEach((each, i) => {
    const style = getComputedStyle(originals[i]);
    for (const property of STYLE) each.setAttribute(property, style.getPropertyValue(property));
    each.removeAttribute("class");
    each.removeAttribute("style");
  });
  copy.removeAttribute("style");
  copy.setAttribute("xmlns", SVG);
  copy.setAttribute("width", width);
  copy.setAttribute("height", height);
  const ground = document.createElementNS(SVG, "rect");
  ground.setAttribute("width", width);
  ground.setAttribute("height", height);
  ground.setAttribute("fill", getComputedStyle(document.documentElement).getPropertyValue("--panel").trim());
  copy.prepend(ground);
  return new XMLSerializer().serializeToString(copy);
}

async function png(drawing) {
  const [, , width, height] = drawing.getAttribute("viewBox").split(" ").map(Number);
  const image = new Image();
  image.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(text(drawing));
  await image.decode();
  const canvas = html("canvas", { width: Math.round(width * 2), height: Math.round(height * 2) });
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise(done => canvas.toBlob(done, "image/png"));
}

function save(blob, name) {
  const link = html("a", { href: URL.createObjectURL(blob), download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
