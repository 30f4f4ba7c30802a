// What all plots share: a drawing as wide as its place, axes, and words that keep clear of one another. Scales and shapes are
// D3's; elements are made by draw.js, so that no text is ever parsed.

import { svg } from "./draw.js";
import { ruler } from "./units.js";

export const d3 = globalThis.d3;

/** An empty drawing. @param shape {height, left, right, top, bottom}: margins around what is drawn */
export function frame(into, shape) {
  const width = Math.max(300, Math.round(into.getBoundingClientRect().width) || 640);
  into.setAttribute("viewBox", `0 0 ${width} ${shape.height}`);
  into.setAttribute("width", width);
  into.setAttribute("height", shape.height);
  into.replaceChildren();
  return { into, width, ...shape, x0: shape.left, x1: width - shape.right, y0: shape.height - shape.bottom, y1: shape.top };
}

/** The axis along the foot, of lengths: marks at whole ones of the unit that is chosen. */
export function lengths(plot, x, said, { zero = "0" } = {}) {
  const [from, to] = x.domain();
  const scale = ruler(to - from, Math.max(3, (plot.x1 - plot.x0) / 85));
  for (let mm = Math.ceil(from / scale.step) * scale.step; mm <= to + 1; mm += scale.step) {
    plot.into.append(svg("line", { class: "grid", x1: x(mm), x2: x(mm), y1: plot.y1, y2: plot.y0 }),
      svg("text", { class: "tick", x: x(mm), y: plot.y0 + 17, "text-anchor": "middle" }, Math.abs(mm) < 1 ? zero : scale.name(mm)));
  }
  plot.into.append(svg("text", { class: "axis", x: plot.x1, y: plot.y0 + 35, "text-anchor": "end" }, said));
}

/** The axis at the left. @param name says a value; above how far over it stands what it is of */
export function levels(plot, y, values, name, said, above = 9) {
  for (const value of values) {
    plot.into.append(svg("line", { class: "grid", x1: plot.x0, x2: plot.x1, y1: y(value), y2: y(value) }),
      svg("text", { class: "tick", x: plot.x0 - 8, y: y(value) + 4, "text-anchor": "end" }, name(value)));
  }
  plot.into.append(svg("text", { class: "axis", x: 0, y: plot.y1 - above }, said));
}

/** Moves labels apart: {y, ...} each, at least so far from one another, from the top to the foot. */
export function apart(labels, gap, top, foot) {
  const sorted = [...labels].sort((a, b) => a.y - b.y);
  sorted.forEach((label, i) => { label.y = Math.max(label.y, i === 0 ? top : sorted[i - 1].y + gap); });
  for (let i = sorted.length - 1; i >= 0; i--) sorted[i].y = Math.min(sorted[i].y, i === sorted.length - 1 ? foot : sorted[i + 1].y - gap);
  return sorted;
}

/** A share of one in hundredths. */
export function hundredths(share) {
  return share == null ? "" : Math.round(100 * share) + "\u00a0%";
}
