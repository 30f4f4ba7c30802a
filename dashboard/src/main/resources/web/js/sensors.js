// A lane's sensors, drawn and named: each state a shape of its own, so that colour is not needed.

import { svg } from "./draw.js";
import { length } from "./units.js";

export const STATES = { clear: "Clear", blocked: "Blocked", stuck: "Stuck", chattering: "Chattering", unseen: "Not seen yet" };
export const BAD = new Set(["stuck", "chattering"]);
const HOLE_MM = 108;
const HOLE_PX = 22;   // the most of its radius
const KINDS = { cup: "Cup", strike: "Strike", pedal: "Pedal", beam: "Beam" };
const ORDER = { beam: 0, cup: 1, strike: 2, pedal: 3 };
const SHAPES = {
  clear: () => svg("circle", { cx: 10, cy: 10, r: 6.5, class: "line" }),
  blocked: () => svg("circle", { cx: 10, cy: 10, r: 8, class: "full" }),
  stuck: () => svg("path", { d: "M3.5 3.5 16.5 16.5M16.5 3.5 3.5 16.5", class: "bad" }),
  chattering: () => svg("path", { d: "M1 10 4 4 8 16 12 4 16 16 19 10", class: "bad" }),
  unseen: () => svg("circle", { cx: 10, cy: 10, r: 6.5, class: "line", "stroke-dasharray": "2.4 3" }),
};

export function sign(state) {
  return svg("svg", { class: "sign", viewBox: "0 0 20 20", "aria-hidden": "true" }, SHAPES[state]());
}

/** What a sensor is called: a beam by its own name, the others by what they are. */
export function called(sensor) {
  return sensor.kind === "beam" ? `Beam ${sensor.name}` : KINDS[sensor.kind];
}

export function place(positionMm) {
  if (positionMm == null) return "";
  return Math.abs(positionMm) < 0.5 ? "at the hole" : length(positionMm) + (positionMm < 0 ? " before the hole" : " past it");
}

/** How long ago, of seconds; null is never. */
export function ago(seconds) {
  if (seconds == null) return "never";
  if (seconds < 1.5) return "just now";
  if (seconds < 90) return Math.round(seconds) + "\u00a0s ago";
  if (seconds < 5_400) return Math.round(seconds / 60) + "\u00a0min ago";
  return seconds < 129_600 ? Math.round(seconds / 3_600) + "\u00a0h ago" : Math.round(seconds / 86_400) + "\u00a0days ago";
}

/** A lane's sensors, numbered in order: along the line, then what lies on none. @param beams where they stand, of the lane's score */
export function fitted(sensors, beams) {
  const places = new Map((beams ?? []).map(beam => [beam.name, beam.position_mm]));
  return (sensors ?? [])
    .map(each => ({ ...each, position_mm: each.kind === "beam" ? places.get(each.name) ?? null : null }))
    .sort((a, b) => ORDER[a.kind] - ORDER[b.kind] || (a.position_mm ?? 0) - (b.position_mm ?? 0))
    .map((each, i) => ({ ...each, number: i + 1 }));
}

/** The line with the hole and the beams to scale, each with its number in the table. */
export function plan(into, rows) {
  const beams = rows.filter(row => row.kind === "beam" && row.position_mm != null);
  const width = Math.max(280, into.getBoundingClientRect().width);
  const height = 132;
  const far = beams.map(beam => beam.position_mm);
  // So much of the line that the hole stays on its strip, however wide the page.
  const near = Math.max(250, HOLE_MM / 2 * (width - 16) / (2 * HOLE_PX));
  const left = Math.min(-near, ...far.map(mm => mm - 120));
  const right = Math.max(near, ...far.map(mm => mm + 120));
  const x = mm => 8 + (mm - left) / (right - left) * (width - 16);
  into.setAttribute("viewBox", `0 0 ${width} ${height}`);
  into.replaceChildren(svg("rect", { x: 0, y: 56, width, height: 52, rx: 8, class: "turf" }),
    svg("line", { x1: 0, x2: width, y1: 82, y2: 82, class: "roll" }),
    svg("circle", { cx: x(0), cy: 82, r: Math.max(7, HOLE_MM / 2 * (width - 16) / (right - left)), class: "hole" }));
  for (const [words, at, anchor] of [["\u2190 player", 2, "start"], ["past \u2192", width - 2, "end"]]) {
    into.append(svg("text", { x: at, y: 127, "text-anchor": anchor }, words));
  }
  const cup = rows.find(row => row.kind === "cup");
  if (cup) tag(into, x(0), 127, cup);
  let taken = -Infinity;
  let high = false;
  for (const beam of [...beams].sort((a, b) => a.position_mm - b.position_mm)) {
    const at = x(beam.position_mm);
    high = at - taken < 26 && !high;
    taken = at;
    const y = high ? 15 : 41;
    into.append(svg("line", { x1: at, x2: at, y1: y + 11, y2: 112, class: "ray", "data-state": beam.state }));
    tag(into, at, y, beam);
  }
}

function tag(into, x, y, row) {
  const cy = row.kind === "cup" ? 122 : y;
  into.append(svg("circle", { cx: x, cy, r: 11, class: "tag", "data-state": row.state }),
    svg("text", { x, y: cy + 4.5, "text-anchor": "middle", class: "number" }, String(row.number)));
}
