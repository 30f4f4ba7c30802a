// The card's drawing: the balls' ways seen from above, and where to aim, seen from the ball. No page in here.

import { svg } from "./draw.js";
import { length } from "./units.js";

const HOLE_MM = 54;
const HALF_PX = 80;         // what the ways may take to either side
const WIDER = [1, 2, 3, 5]; // sideways is drawn so many times as wide, where little would be seen else
const AIM_ROW = 20;

/** Draws into an svg, as wide as it is on the page, or as is said. */
export function plan(into, card, width = Math.max(320, Math.round(into.getBoundingClientRect().width || 900))) {
  const above = ways(into, card, width);
  const height = aims(into, card, width, above);
  into.setAttribute("viewBox", `0 0 ${width} ${height}`);
}

/** The plan. @return its height */
function ways(into, card, width) {
  const rows = card.rows;
  const furthest = Math.max(...rows.map(row => row.distance_mm));
  const last = Math.max(HOLE_MM * 2, ...rows.flatMap(row => row.past.map(([x]) => x)));
  const scale = (width - 40) / (furthest + last);
  const x = mm => 20 + (mm + furthest) * scale;
  const wide = Math.max(HOLE_MM, ...rows.flatMap(row => [row.beside_mm, ...row.way.map(each => each[1]), ...row.past.map(each => each[1])]).map(Math.abs));
  const wider = WIDER.findLast(each => each * scale * wide <= HALF_PX) ?? 1;
  const half = Math.max(26, wide * scale * wider + 10);
  const middle = half + 40;
  const y = mm => middle - mm * scale * wider;
  into.replaceChildren(
    svg("text", { x: 20, y: 16, class: "heading" }, "From above" + (wider > 1 ? `, sideways drawn ${wider} times as wide` : "")),
    svg("rect", { x: 0, y: middle - half, width, height: 2 * half, class: "turf", rx: 8 }),
    svg("line", { x1: x(-furthest), x2: x(last), y1: middle, y2: middle, class: "centre" }));
  const line = places => "M" + places.map(([a, b]) => `${x(a).toFixed(1)} ${y(b).toFixed(1)}`).join("L");
  for (const row of rows) {
    into.append(svg("path", { d: line(row.past), class: "past-way" }), svg("path", { d: line(row.way), class: "way" }));
  }
  into.append(svg("ellipse", { cx: x(0), cy: middle, rx: Math.max(4, HOLE_MM * scale), ry: Math.max(4, HOLE_MM * scale * wider), class: "pit" }));
  for (const row of rows) {
    into.append(svg("line", { x1: x(0), x2: x(0), y1: y(row.beside_mm) - 5, y2: y(row.beside_mm) + 5, class: "aim" }));
  }
  stations(into, rows, x, middle, half);
  return middle + half + 22;
}

function stations(into, rows, x, middle, half) {
  let free = -Infinity;
  for (const row of [...rows].sort((a, b) => b.distance_mm - a.distance_mm)) {
    const at = x(-row.distance_mm);
    into.append(svg("circle", { cx: at, cy: middle, r: 4.5, class: "ball" }));
    const words = length(row.distance_mm);
    const wide = words.length * 6.6;
    if (at - wide / 2 > free) {
      const place = Math.max(wide / 2, at);
      into.append(svg("text", { x: place, y: middle + half + 16, "text-anchor": "middle", class: "mark" }, words));
      free = place + wide / 2 + 4;
    }
  }
}

/** The hole to scale, and beside it each station's aim. @return where the drawing ends */
function aims(into, card, width, top) {
  const wide = Math.max(2.2 * HOLE_MM, ...card.rows.map(row => Math.abs(row.beside_mm))) * 1.12;
  const scale = (width - 110) / (2 * wide);
  const x = mm => width / 2 - mm * scale; // what is left of the hole is on the left
  const placed = place(card.rows, x, width);
  const levels = Math.max(...placed.map(each => each.level)) + 1;
  const ground = top + 34 + levels * AIM_ROW + 8;
  const deep = Math.min(46, HOLE_MM * scale * 0.7);
  into.append(svg("text", { x: 20, y: top + 18, class: "heading" }, "Where to aim, seen from the ball"),
    svg("line", { x1: 20, x2: width - 20, y1: ground, y2: ground, class: "ground" }));
  for (const each of placed) {
    const y = ground - 8 - each.level * AIM_ROW;
    into.append(svg("line", { x1: each.x, x2: each.x, y1: y, y2: ground + deep / 2, class: "leader" }),
      svg("text", { x: each.place, y: y - 3, "text-anchor": "middle", class: "aim-said" }, each.words));
  }
  into.append(svg("ellipse", { cx: x(0), cy: ground + deep / 2, rx: HOLE_MM * scale, ry: deep / 2, class: "pit" }));
  for (const each of placed) {
    into.append(svg("path", { d: `M${each.x} ${ground + deep / 2 - 5}l5 5l-5 5l-5 -5z`, class: "aim" }));
  }
  return ground + deep + 12;
}

/** Words over one another where they would touch. */
function place(rows, x, width) {
  const ends = [];
  return [...rows].sort((a, b) => a.beside_mm - b.beside_mm || a.distance_mm - b.distance_mm).map(row => {
    const words = length(row.distance_mm);
    const half = words.length * 3.9 + 5;
    const place = Math.max(half, Math.min(width - half, x(row.beside_mm)));
    let level = ends.findIndex(end => place + half < end);
    if (level < 0) level = ends.length;
    ends[level] = place - half;
    return { x: x(row.beside_mm), place, level, words };
  });
}
