// Session by session: more or fewer holed than as the player putts now, and where it turned.

import { svg } from "./draw.js";
import { d3, frame, levels } from "./plot.js";
import { when } from "./logbook.js";

/** Draws. @param time as the host gives it */
export function turnsPlot(into, time, zone) {
  const plot = frame(into, { height: 320, left: 46, right: 16, top: 44, bottom: 34 });
  const points = time.points;
  const [first, last] = [points[0].at_ms, points[points.length - 1].at_ms];
  const x = d3.scaleUtc([first, Math.max(last, first + 86_400_000)], [plot.x0 + 8, plot.x1 - 8]);
  const most = Math.min(100, Math.max(20, d3.quantile(points.map(each => Math.max(Math.abs(each.low), Math.abs(each.high))), 0.95)));
  const y = d3.scaleLinear([-most, most], [plot.y0, plot.y1]).clamp(true);
  levels(plot, y, y.ticks(5), value => (value > 0 ? "+" : value < 0 ? "\u2212" : "") + Math.abs(value), "more or fewer of 100 holed than as you putt now", 28);
  const months = x.ticks(Math.max(2, Math.min(12, (plot.x1 - plot.x0) / 90)));
  for (const at of months) {
    into.append(svg("text", { class: "tick", x: x(at), y: plot.y0 + 18, "text-anchor": "middle" }, when(at.getTime(), zone, { day: "numeric", month: "short" })));
  }
  into.append(svg("line", { class: "level", x1: plot.x0, x2: plot.x1, y1: y(0), y2: y(0) }));
  for (const point of points) {
    const clear = point.low > 0 ? "above" : point.high < 0 ? "below" : "level-with";
    into.append(svg("line", { class: "whisker " + clear, x1: x(point.at_ms), x2: x(point.at_ms), y1: y(point.low), y2: y(point.high) }), sign(clear, x(point.at_ms), y(point.per_hundred)));
  }
  for (const mark of time.marks) {
    const at = x(mark.at_ms);
    const end = at > (plot.x0 + plot.x1) / 2;
    into.append(svg("line", { class: "turn", x1: at, x2: at, y1: plot.y1 - 8, y2: plot.y0 }),
      svg("text", { class: "turn-said", x: at + (end ? -6 : 6), y: plot.y1 - 8 + 12, "text-anchor": end ? "end" : "start" },
        `${mark.better ? "\u25b2 better" : "\u25bc worse"} since ${when(mark.at_ms, zone, { day: "numeric", month: "short" })}`));
  }
}

function sign(clear, x, y) {
  if (clear === "above") return svg("path", { class: "dot above", d: `M${x} ${y - 4.5}l4.5 8h-9z` });
  if (clear === "below") return svg("path", { class: "dot below", d: `M${x} ${y + 4.5}l4.5 -8h-9z` });
  return svg("circle", { class: "dot level-with", cx: x, cy: y, r: 3.2 });
}

export function turnsNumbers(time) {
  const turns = new Map(time.marks.map(mark => [mark.session, mark.better ? "better" : "worse"]));
  return { columns: ["session", "at", "putts", "holed", "expected", "more_in_100", "low", "high", "chance_of_a_turn", "turn"],
    rows: time.points.map(point => [point.session, new Date(point.at_ms).toISOString(), point.putts, point.made, point.expected, point.per_hundred, point.low, point.high, point.turned,
      [...turns].find(([session]) => session >= point.session && session < point.session + time.together)?.[1] ?? ""]) };
}
