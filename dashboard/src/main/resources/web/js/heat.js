// The week by hour: a table whose numbers say all, shaded in one hue so that a glance finds the busy hours.

import { html } from "./draw.js";

const DAYS = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"];
const STEPS = 5;

export function dayName(day) {
  return DAYS[day - 1];
}

export function hourSaid(hour) {
  return `${hour} to ${hour + 1}`;
}

/** Fills the table. @param cells all hours of the week @return the largest share of a step each, in percent */
export function heat(head, body, cells) {
  const hours = shown(cells);
  const most = Math.max(...cells.map(cell => cell.figures.share ?? 0));
  const step = Math.max(1, Math.ceil(most * 100 / STEPS));
  head.replaceChildren(html("tr", {}, html("td", {}), ...DAYS.map(day =>
    html("th", { scope: "col" }, html("abbr", { title: day }, day.slice(0, 3))))));
  body.replaceChildren(...hours.map(hour => html("tr", {}, html("th", { scope: "row" }, String(hour), html("span", { class: "unseen" }, ` to ${hour + 1}`)),
    ...DAYS.map((_, i) => cell(cells[i * 24 + hour].figures, step)))));
  return Array.from({ length: STEPS }, (_, i) => Math.min(100, (i + 1) * step));
}

function shown(cells) {
  const some = cells.filter(cell => cell.figures.open_ms > 0 || cell.figures.play_ms + cell.figures.closed_ms > 0).map(cell => cell.hour);
  const first = Math.min(...some, 23);
  const last = Math.max(...some, first);
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

function cell(figures, step) {
  if (figures.share == null) {
    const played = figures.closed_ms > 0;
    return html("td", { class: "closed" }, html("span", { class: "unseen" }, played ? "closed, but played in" : "closed"), played ? html("span", { "aria-hidden": "true" }, "+") : "");
  }
  const percent = Math.round(figures.share * 100);
  return html("td", { "data-step": percent === 0 ? 0 : Math.min(STEPS, Math.ceil(percent / step)) }, String(percent));
}
