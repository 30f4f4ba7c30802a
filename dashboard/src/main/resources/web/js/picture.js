// The last putt on its line, to scale: the hole, the limit, where the ball came to rest and how sure that is.

import { svg } from "./draw.js";
import { length, ruler, small } from "./units.js";
import { halfWidth } from "./words.js";

const HOLE_MM = 108;
const BALL_MM = 42.67;

const calm = matchMedia("(prefers-reduced-motion: reduce)");

/** Draws into an SVG element of whatever size; roll: whether the ball is to roll in. */
export function picture(into, score, attempt, roll) {
  const box = into.getBoundingClientRect();
  const width = Math.max(260, box.width);
  const height = Math.max(120, box.height);
  into.setAttribute("viewBox", `0 0 ${width} ${height}`);
  into.replaceChildren();
  const scene = plan(score, attempt, width, height);
  into.append(defs());
  lane(into, scene);
  beams(into, scene, score?.beams ?? []);
  rulerBelow(into, scene);
  if (attempt) {
    way(into, scene, attempt);
    sureness(into, scene, attempt);
  }
  hole(into, scene);
  if (attempt) {
    ball(into, scene, attempt, roll && !calm.matches);
  }
}

/** The scale: enough before the hole to see the ball come, enough behind it for limit and finish. */
function plan(score, attempt, width, height) {
  const limit = score?.limit_mm ?? 914.4;
  const finish = attempt?.finish_mm ?? (attempt?.outcome === "holed" ? attempt?.pace_mm : null);
  const spread = attempt && attempt.finish_mm != null ? halfWidth(attempt) ?? 0 : 0;
  const [low, high] = attempt?.finish_between_mm ?? [null, null];
  let right = Math.max(limit * 1.22, limit + 160, 500);
  if (finish != null) right = Math.max(right, finish + spread + 160);
  if (finish == null && low != null) right = Math.max(right, (high ?? low + 400) + 160);
  let left = -Math.max(300, 0.42 * right);
  if (finish != null && finish < 0) left = Math.min(left, finish - spread - 200);
  const text = Math.max(12, Math.min(width / 32, height / 9.5));
  const scale = width / (right - left);
  const middle = height * 0.5 - text * 0.15;
  const band = Math.max(scale * HOLE_MM * 1.5, height * 0.3);
  return { left, right, limit, width, height, text, scale, middle, band, x: mm => (mm - left) * scale };
}

function defs() {
  return svg("defs", {}, svg("pattern", { id: "hatch", width: 10, height: 10, patternUnits: "userSpaceOnUse", patternTransform: "rotate(45)" },
    svg("line", { x1: 0, y1: 0, x2: 0, y2: 10, stroke: "var(--past)", "stroke-width": 2.5, opacity: 0.5 })),
  svg("pattern", { id: "haze", width: 9, height: 9, patternUnits: "userSpaceOnUse", patternTransform: "rotate(-45)" },
    svg("line", { x1: 0, y1: 0, x2: 0, y2: 9, stroke: "var(--chalk)", "stroke-width": 2, opacity: 0.45 })));
}

function lane(into, s) {
  const top = s.middle - s.band / 2;
  into.append(svg("rect", { x: 0, y: top, width: s.width, height: s.band, rx: 8, fill: "var(--turf)" }));
  const limit = s.x(s.limit);
  into.append(svg("rect", { x: limit, y: top, width: s.width - limit, height: s.band, fill: "url(#hatch)" }),
    svg("line", { x1: limit, x2: limit, y1: top - s.text * 0.3, y2: top + s.band + s.text * 0.5, stroke: "var(--past)", "stroke-width": 2.5 }));
  label(into, s, Math.min(limit, s.width - s.text * 6), top + s.band + s.text * 1.55, "limit " + length(s.limit), { size: 0.86, anchor: "middle", fill: "var(--past)", weight: 600 });
}

/** The light across the line, where it stands: what saw the ball. */
function beams(into, s, all) {
  const top = s.middle - s.band / 2;
  for (const mm of all.map(each => each.position_mm).filter(mm => mm > s.left && mm < s.right)) {
    into.append(svg("line", { class: "beam", x1: s.x(mm), x2: s.x(mm), y1: top - s.text * 0.2, y2: top + s.band + s.text * 0.2 }));
  }
}

function rulerBelow(into, s) {
  const bottom = s.middle + s.band / 2;
  const marks = ruler(s.right - s.left, Math.max(3, s.width / (s.text * 4.4)));
  for (let mm = Math.ceil(s.left / marks.step) * marks.step; mm <= s.right; mm += marks.step) {
    const x = s.x(mm);
    const near = Math.abs(x - Math.min(s.x(s.limit), s.width - s.text * 6));
    if (x < s.text * 5.4 || x > s.width - s.text * 4.6 || near < s.text * 4.8) continue;
    into.append(svg("line", { x1: x, x2: x, y1: bottom, y2: bottom + s.text * 0.5, stroke: "var(--mist)", "stroke-width": 1.5 }));
    label(into, s, x, bottom + s.text * 1.55, marks.name(mm), { size: 0.86, anchor: "middle" });
  }
  label(into, s, 0, bottom + s.text * 1.55, "\u2190 short", { size: 0.86 });
  label(into, s, s.width, bottom + s.text * 1.55, "past \u2192", { size: 0.86, anchor: "end" });
}

/** A miss that lies level with the hole lies beside it; on which side no beam tells, so it is drawn on this one. */
function level(s, attempt) {
  const beside = (HOLE_MM + BALL_MM) / 2;
  return lies(attempt) && Math.abs(attempt.finish_mm) < beside ? s.middle + (beside + 8) * s.scale : s.middle;
}

function lies(attempt) {
  return attempt.outcome !== "holed" && attempt.finish_mm != null;
}

/** The way that the ball came; the hole lies over it. */
function way(into, s, attempt) {
  const end = attempt.outcome === "holed" ? 0 : attempt.finish_mm;
  if (end != null) {
    const y = level(s, attempt);
    into.append(svg("line", { x1: 0, x2: s.x(end), y1: y, y2: y, stroke: colour(attempt), "stroke-width": Math.max(2, BALL_MM * s.scale * 0.14), opacity: 0.8 }));
  }
}

/** The stretch that holds the finish 95 times in 100; hatched where no more than bounds are known. */
function sureness(into, s, attempt) {
  if (attempt.outcome === "holed") return;
  const [low, high] = attempt.finish_between_mm ?? [null, null];
  const known = attempt.finish_mm != null;
  const half = halfWidth(attempt) ?? 0;
  const from = known ? s.x(attempt.finish_mm - half) : Math.max(0, s.x(low ?? s.left));
  const to = known ? s.x(attempt.finish_mm + half) : Math.min(s.width, s.x(high ?? s.limit));
  const tall = known ? Math.max(BALL_MM * s.scale * 1.9, s.text * 1.1) : s.band * 0.72;
  const y = level(s, attempt) - tall / 2;
  if (known) {
    into.append(svg("rect", { x: from, y, width: to - from, height: tall, rx: 3, fill: colour(attempt), opacity: 0.3 }),
      svg("path", { d: `M${from} ${y}V${y + tall}M${to} ${y}V${y + tall}`, stroke: colour(attempt), "stroke-width": 2.5, fill: "none" }));
  } else {
    into.append(svg("rect", { x: from, y, width: Math.max(6, to - from), height: tall, rx: 6, fill: "url(#haze)" }));
    label(into, s, (from + to) / 2, s.middle - s.band / 2 - s.text * 0.75, "somewhere here", { size: 0.95, anchor: "middle", fill: "var(--chalk)" });
  }
}

function hole(into, s) {
  const r = Math.max(7, HOLE_MM / 2 * s.scale);
  into.append(svg("circle", { cx: s.x(0), cy: s.middle, r, fill: "var(--pit)", stroke: "var(--mist)", "stroke-width": 2 }));
}

function ball(into, s, attempt, rolls) {
  const r = Math.max(5, BALL_MM / 2 * s.scale);
  const holed = attempt.outcome === "holed";
  const rest = holed ? 0 : attempt.finish_mm;
  if (rest == null) {
    return;
  }
  const x = s.x(rest);
  if (holed) {
    into.append(svg("circle", { cx: x, cy: s.middle, r: Math.max(7, HOLE_MM / 2 * s.scale) + 3, fill: "none", stroke: "var(--in)", "stroke-width": 3 }));
    ghost(into, s, attempt, r);
  }
  const drawn = svg("circle", { cx: x, cy: level(s, attempt), r, fill: holed ? "var(--in)" : "var(--ball)", stroke: holed ? "none" : colour(attempt), "stroke-width": Math.max(2, r * 0.3) });
  into.append(drawn);
  if (!holed) {
    finishLabel(into, s, attempt, x);
  }
  if (rolls) {
    // Slowing down evenly, as a ball does: x = 1 - (1 - t)^2.
    drawn.animate([{ transform: `translateX(${-x - r}px)` }, { transform: "none" }], { duration: 1100, easing: "cubic-bezier(0.33, 0.66, 0.66, 1)" });
  }
}

/** Where a holed ball would have come to rest. */
function ghost(into, s, attempt, r) {
  if (attempt.pace_mm == null) return;
  const x = s.x(attempt.pace_mm);
  into.append(svg("line", { x1: s.x(0), x2: x, y1: s.middle, y2: s.middle, stroke: "var(--in)", "stroke-width": 2, "stroke-dasharray": "3 7", "stroke-linecap": "round" }),
    svg("circle", { cx: x, cy: s.middle, r, fill: "none", stroke: "var(--in)", "stroke-width": 2, "stroke-dasharray": "4 4" }));
  label(into, s, keepIn(s, x, 4), s.middle - s.band / 2 - s.text * 0.75, "pace " + length(attempt.pace_mm), { size: 0.95, anchor: "middle", fill: "var(--in)" });
}

function finishLabel(into, s, attempt, x) {
  const half = halfWidth(attempt);
  const said = length(attempt.finish_mm) + (half == null ? "" : " \u00b1 " + small(half));
  label(into, s, keepIn(s, x, 5.5), s.middle - s.band / 2 - s.text * 0.75, said, { size: 1.15, anchor: "middle", fill: "var(--chalk)", weight: 650 });
}

function keepIn(s, x, ems) {
  return Math.max(s.text * ems, Math.min(s.width - s.text * ems, x));
}

function colour(attempt) {
  return attempt.outcome === "holed" ? "var(--in)" : attempt.overshoot ? "var(--past)" : "var(--mist)";
}

function label(into, s, x, y, words, { size = 1, anchor = "start", fill = "var(--mist)", weight = 450 } = {}) {
  into.append(svg("text", { x, y, "font-size": s.text * size, "text-anchor": anchor, "font-weight": weight }, words));
  into.lastChild.style.fill = fill;
}
