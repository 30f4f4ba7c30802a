// The latest misses on the line: how far short of the hole or past it each came to rest, by where it was putted from.

import { svg } from "./draw.js";
import { d3, frame, lengths } from "./plot.js";
import { length, ruler } from "./units.js";

const HOLE_MM = 108;

/** Draws. @param finishes as the host gives them */
export function finishPlot(into, finishes) {
  const plot = frame(into, { height: 360, left: 62, right: 16, top: 30, bottom: 44 });
  const misses = finishes.misses;
  const reach = Math.max(finishes.limit_mm * 1.35, d3.quantile(misses.map(each => Math.abs(each.finish_mm)), 0.98) ?? 0, 600);
  const x = d3.scaleLinear([Math.max(-reach, Math.min(-400, (d3.min(misses, each => each.finish_mm) ?? 0) - 60)), reach], [plot.x0, plot.x1]).clamp(true);
  const far = d3.max(misses, each => each.distance_mm) ?? 3_000;
  const y = d3.scaleLinear([0, far * 1.06], [plot.y0, plot.y1]);
  lengths(plot, x, "past the hole \u2192", { zero: "hole" });
  const scale = ruler(far, 6);
  for (let mm = scale.step; mm <= far * 1.03; mm += scale.step) {
    into.append(svg("line", { class: "grid", x1: plot.x0, x2: plot.x1, y1: y(mm), y2: y(mm) }), svg("text", { class: "tick", x: plot.x0 - 8, y: y(mm) + 4, "text-anchor": "end" }, scale.name(mm)));
  }
  into.append(svg("text", { class: "axis", x: 0, y: plot.y1 - 12 }, "putted from"));
  into.append(svg("rect", { class: "pit", x: x(-HOLE_MM / 2), y: plot.y1, width: Math.max(3, x(HOLE_MM / 2) - x(-HOLE_MM / 2)), height: plot.y0 - plot.y1 }),
    svg("line", { class: "limit", x1: x(finishes.limit_mm), x2: x(finishes.limit_mm), y1: plot.y1 - 4, y2: plot.y0 }),
    svg("text", { class: "limit-said", x: x(finishes.limit_mm) + 5, y: plot.y1 + 4 }, "limit " + length(finishes.limit_mm)));
  misses.forEach((miss, i) => {
    const at = [x(miss.finish_mm), y(miss.distance_mm) + ((i * 7) % 11 - 5) * 1.2];
    into.append(miss.finish_mm > finishes.limit_mm ? svg("path", { class: "past", d: `M${at[0] - 4} ${at[1] - 4}l8 4l-8 4z` })
      : svg("circle", { class: miss.rim ? "miss rim" : "miss", cx: at[0], cy: at[1], r: miss.rim ? 3.4 : 3.6 }));
  });
}

/** In words what its signs mean, and what is not on it. */
export function finishKey(finishes) {
  const shown = `The latest ${finishes.misses.length} misses that were measured: a ring each, filled where it touched the rim, an arrowhead where it ran past the limit.`;
  return finishes.unseen > 0 ? `${shown} Another ${finishes.unseen} of that time stopped short of the first beam and are not on it.` : shown;
}

export function finishNumbers(finishes) {
  return { columns: ["at", "distance_mm", "finish_mm", "rim", "past_limit"],
    rows: finishes.misses.map(miss => [new Date(miss.at_ms).toISOString(), miss.distance_mm, miss.finish_mm, miss.rim ? 1 : 0, miss.finish_mm > finishes.limit_mm ? 1 : 0]) };
}
