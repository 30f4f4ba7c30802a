// A drill's stations along a line, all drills of a shelf to the same scale: the hole at the left, the furthest station at the right.

import { svg } from "./draw.js";
import { distances } from "./drill-words.js";

const WIDTH = 400;
const EDGE = 12;

/** @param farMm the furthest station of the whole shelf; brief() says in words what is drawn */
export function stationStrip(drill, farMm) {
  const x = mm => EDGE + mm / farMm * (WIDTH - 2 * EDGE);
  const all = distances(drill);
  return svg("svg", { class: "stations", viewBox: `0 0 ${WIDTH} 24`, "aria-hidden": "true" },
    svg("line", { class: "way", x1: x(0), x2: x(Math.max(...all)), y1: 12, y2: 12 }),
    svg("circle", { class: "pit", cx: x(0), cy: 12, r: 7 }),
    ...all.map(mm => svg("circle", { class: "station", cx: x(mm), cy: 12, r: all.length > 15 ? 3 : 4.5 })));
}
