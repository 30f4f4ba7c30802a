// How far a run should go: for each number of stations, how many of a hundred runs clear so many or more.

import { svg } from "./draw.js";
import { d3, frame, hundredths, levels } from "./plot.js";

/** Draws. @param run as the host gives it; its last run of the day is marked */
export function runPlot(into, run) {
  const plot = frame(into, { height: 250, left: 46, right: 10, top: 42, bottom: 40 });
  const stations = run.at_least.map((_, i) => i).slice(1);
  const x = d3.scaleBand(stations, [plot.x0, plot.x1]).padding(0.22);
  const y = d3.scaleLinear([0, 1], [plot.y0, plot.y1]);
  levels(plot, y, [0, 0.5, 1], hundredths, "of 100 runs", 24);
  const narrow = x.bandwidth() < 30;
  const last = run.runs[run.runs.length - 1];
  for (const station of stations) {
    const chance = run.at_least[station];
    const middle = x(station) + x.bandwidth() / 2;
    into.append(svg("rect", { class: "bar", x: x(station), y: y(chance), width: x.bandwidth(), height: Math.max(0.5, plot.y0 - y(chance)) }),
      svg("text", { class: "tick", x: middle, y: plot.y0 + 16, "text-anchor": "middle" }, String(station)));
    if (!narrow || station % 2 === 1) into.append(svg("text", { class: "bar-said", x: middle, y: y(chance) - 5, "text-anchor": "middle" }, chance > 0 && chance < 0.005 ? "<1" : String(Math.round(100 * chance))));
    if (last?.stations === station) into.append(svg("path", { class: "last", d: `M${middle - 6} ${plot.y0 + 21}h12l-6 -8z` }));
  }
  into.append(svg("text", { class: "axis", x: plot.x1, y: plot.y0 + 34, "text-anchor": "end" }, last ? `stations cleared, or more; \u25b2 the last run: ${last.stations}` : "stations cleared, or more"));
}

export function runNumbers(run) {
  return { columns: ["stations_or_more", "chance"], rows: run.at_least.map((chance, stations) => [stations, chance]) };
}
