// The make rate over distance: the player's curve in its band, a mark for each place putted from, and others' lines.

import { svg } from "./draw.js";
import { apart, d3, frame, hundredths, lengths, levels } from "./plot.js";

const SHORT = { "tour professionals": "tour", "golfers who go round in 90": "90-golfer" };
const MARKS_FROM = 5;

/** Draws. @param curve as the host gives it */
export function curvePlot(into, curve) {
  const plot = frame(into, { height: 400, left: 46, right: 92, top: 26, bottom: 44 });
  const x = d3.scaleLinear([0, curve.points[curve.points.length - 1].distance_mm], [plot.x0, plot.x1]);
  const y = d3.scaleLinear([0, 1], [plot.y0, plot.y1]);
  levels(plot, y, [0, 0.25, 0.5, 0.75, 1], hundredths, "holed");
  lengths(plot, x, "from");
  const along = key => d3.line(point => x(point.distance_mm), point => y(point[key])).curve(d3.curveMonotoneX);
  const between = (low, high) => d3.area(point => x(point.distance_mm), point => y(point[low]), point => y(point[high])).curve(d3.curveMonotoneX);
  const labels = [];
  const last = curve.points[curve.points.length - 1];
  if (curve.company != null) {
    into.append(svg("path", { class: "company", d: between("quarter", "three_quarters")(curve.points) }));
    labels.push({ y: y(last.half), class: "company-said", text: "this studio" });
  }
  into.append(svg("path", { class: "band", d: between("low", "high")(curve.points) }));
  curve.benches.forEach((bench, i) => {
    const rates = bench.rates.filter(rate => rate.distance_mm <= x.domain()[1]);
    if (rates.length === 0) return;
    into.append(svg("path", { class: "bench bench-" + i, d: along("share")(rates) }),
      ...rates.map(rate => i === 0 ? svg("rect", { class: "bench-dot", x: x(rate.distance_mm) - 2.5, y: y(rate.share) - 2.5, width: 5, height: 5 })
        : svg("path", { class: "bench-dot", d: `M${x(rate.distance_mm)} ${y(rate.share) - 3.5}l3.5 6h-7z` })));
    labels.push({ y: y(rates[rates.length - 1].share), class: "bench-said", text: SHORT[bench.name] ?? bench.name });
  });
  into.append(svg("path", { class: "curve", d: along("share")(curve.points) }));
  for (const tally of curve.tallies.filter(each => each.putts >= MARKS_FROM)) {
    into.append(svg("line", { class: "whisker", x1: x(tally.distance_mm), x2: x(tally.distance_mm), y1: y(tally.low), y2: y(tally.high) }),
      svg("circle", { class: "tally", cx: x(tally.distance_mm), cy: y(tally.share), r: 4 }));
  }
  labels.push({ y: y(last.share), class: "curve-said", text: "you" });
  for (const label of apart(labels, 16, plot.y1 + 6, plot.y0 - 2)) {
    into.append(svg("text", { class: label.class, x: plot.x1 + 8, y: label.y + 4 }, label.text));
  }
}

/** The numbers behind it, as they are drawn. */
export function curveNumbers(curve) {
  const rows = curve.points.map(point => ["curve", point.distance_mm, point.share, point.low, point.high, "", ""]);
  if (curve.company != null) rows.push(...curve.points.map(point => ["this studio, the middle half", point.distance_mm, point.half, point.quarter, point.three_quarters, "", ""]));
  rows.push(...curve.tallies.map(tally => ["putts from here", tally.distance_mm, tally.share, tally.low, tally.high, tally.putts, tally.made]));
  for (const bench of curve.benches) rows.push(...bench.rates.map(rate => [bench.name, rate.distance_mm, rate.share, "", "", "", ""]));
  return { columns: ["what", "distance_mm", "share_holed", "low", "high", "putts", "holed"], rows };
}
