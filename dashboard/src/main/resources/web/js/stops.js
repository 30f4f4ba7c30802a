// All misses of a session along the line, to scale: a dot where each ball came to rest.

import { svg } from "./draw.js";
import { length, ruler } from "./units.js";
import { counted } from "./words.js";

const HOLE_MM = 108;

/** In words what the picture shows. @param putts that count, holed ones too */
export function stopsSaid(putts) {
  const misses = putts.filter(each => each.attempt.outcome !== "holed");
  if (misses.length === 0) return "There were none.";
  const known = misses.map(each => each.attempt.finish_mm).filter(mm => mm != null).sort((a, b) => a - b);
  const short = misses.filter(each => shortOf(each.attempt)).length;
  const said = [`${counted(misses.length, "miss", "misses")}: ${short} short of the hole, ${misses.length - short} level with it or past it`];
  if (known.length > 0) said.push(`half of those measured stopped no further than ${length(known[Math.floor((known.length - 1) / 2)])}${known[Math.floor((known.length - 1) / 2)] < 0 ? " short" : " past"}`);
  if (known.length < misses.length) said.push(`${misses.length - known.length} stopped where no beam could tell how far`);
  return said.join("; ") + ".";
}

function shortOf(attempt) {
  if (attempt.finish_mm != null) return attempt.finish_mm < 0;
  const high = attempt.finish_between_mm?.[1];
  return high != null && high <= 0;
}

/** Draws. @param limitMm null where the runs' limits differ */
export function stops(into, misses, limitMm) {
  const width = Math.max(280, into.getBoundingClientRect().width);
  const known = misses.map(each => each.attempt).filter(each => each.finish_mm != null);
  const ends = known.map(each => each.finish_mm);
  const left = Math.min(-300, ...ends.map(mm => mm - 100));
  const right = Math.max((limitMm ?? 600) * 1.15, 500, ...ends.map(mm => mm + 100));
  const x = mm => (mm - left) / (right - left) * width;
  const r = Math.max(3.2, Math.min(6, width / 130));
  const stacked = stack(known, x, r);
  const tall = Math.max(2, ...stacked.map(each => each.level + 1)) * r * 2.15;
  const [top, base] = [r, r + tall + 4];
  const height = base + 40;
  into.setAttribute("viewBox", `0 0 ${width} ${height}`);
  into.style.height = height + "px";
  into.replaceChildren(svg("rect", { x: 0, y: base, width, height: 10, class: "turf" }));
  if (limitMm != null) {
    into.append(svg("line", { x1: x(limitMm), x2: x(limitMm), y1: top, y2: base + 14, class: "limit" }),
      svg("text", { x: Math.min(x(limitMm) + 5, width - 60), y: top + 9, class: "limit-said" }, "limit"));
  }
  into.append(svg("rect", { x: x(-HOLE_MM / 2), y: base, width: x(HOLE_MM) - x(0), height: 10, class: "pit" }));
  marks(into, x, left, right, width, base);
  for (const each of stacked) {
    const y = base - r - 1.5 - each.level * r * 2.15;
    into.append(each.attempt.overshoot
      ? svg("path", { d: `M${each.x - r} ${y - r}L${each.x + r} ${y}L${each.x - r} ${y + r}Z`, class: "past" })
      : svg("circle", { cx: each.x, cy: y, r: r - 0.8, class: "miss" }));
  }
}

/** Dots that would lie on one another stand on one another. */
function stack(known, x, r) {
  const columns = new Map();
  return [...known].sort((a, b) => a.finish_mm - b.finish_mm).map(attempt => {
    const column = Math.round(x(attempt.finish_mm) / (2 * r));
    const level = columns.get(column) ?? 0;
    columns.set(column, level + 1);
    return { attempt, level, x: column * 2 * r };
  });
}

function marks(into, x, left, right, width, base) {
  const scale = ruler(right - left, Math.max(3, width / 90));
  for (let mm = Math.ceil(left / scale.step) * scale.step; mm <= right; mm += scale.step) {
    into.append(svg("line", { x1: x(mm), x2: x(mm), y1: base + 10, y2: base + 15, class: "mark-line" }));
    if (x(mm) > 22 && x(mm) < width - 22) into.append(svg("text", { x: x(mm), y: base + 28, "text-anchor": "middle" }, Math.abs(mm) < 1 ? "hole" : scale.name(mm)));
  }
}
