// Strengths: every kind of putt, by distance, break and slope, each set against the others of its distance.

import { svg } from "./draw.js";
import { frame, hundredths } from "./plot.js";

const BREAKS = [["left-to-right", "left to right"], ["straight", "straight"], ["right-to-left", "right to left"]];
const SLOPES = ["uphill", "level", "downhill"];
const SIGNS = { weak: "\u25bc weak", strong: "\u25b2 strong", alike: "= alike" };

/** Draws. @param strengths as the host gives them */
export function gridPlot(into, strengths) {
  const narrow = into.getBoundingClientRect().width < 640;
  const distances = [...new Set(strengths.cells.map(cell => cell.distance))];
  const block = 238;
  const plot = frame(into, { height: narrow ? block * distances.length : block, left: 62, right: 2, top: 0, bottom: 0 });
  const gap = 14;
  const wide = narrow ? plot.x1 - plot.x0 : (plot.x1 - plot.x0 - gap * (distances.length - 1)) / distances.length;
  distances.forEach((distance, i) => {
    const x = plot.x0 + (narrow ? 0 : i * (wide + gap));
    const y = narrow ? i * block : 0;
    into.append(svg("text", { class: "band-said", x, y: y + 15 }, distance[0].toUpperCase() + distance.slice(1)));
    BREAKS.forEach(([, said], column) => into.append(svg("text", { class: "tick", x: x + (column + 0.5) * wide / 3, y: y + 34, "text-anchor": "middle" }, said)));
    SLOPES.forEach((slope, row) => {
      const top = y + 42 + row * 64;
      if (narrow || i === 0) into.append(svg("text", { class: "tick", x: plot.x0 - 8, y: top + 33, "text-anchor": "end" }, slope));
      BREAKS.forEach(([breaks], column) => {
        const cell = strengths.cells.find(each => each.distance === distance && each.breaks === breaks && each.slope === slope);
        into.append(...drawn(cell, x + column * wide / 3, top, wide / 3 - 3, 60));
      });
    });
  });
}

function drawn(cell, x, y, width, height) {
  const middle = x + width / 2;
  const words = (text, at, kind) => svg("text", { class: kind, x: middle, y: y + at, "text-anchor": "middle" }, text);
  const box = svg("rect", { class: "cell " + cell.verdict, x: x + 1.5, y: y + 1.5, width: width - 3, height: height - 3, rx: 6 });
  if (cell.putts === 0) return [box, words("no putts", 35, "cell-few")];
  return [box, words(hundredths(cell.share), 20, "cell-share"), words(`${cell.made} of ${cell.putts}`, 36, "cell-tally"),
    words(cell.verdict === "unknown" ? `? ${cell.more_needed >= 2_000 ? "2000+" : cell.more_needed} more` : SIGNS[cell.verdict], 51, cell.verdict === "unknown" ? "cell-few" : "cell-sign")];
}

export function gridNumbers(strengths) {
  return { columns: ["distance", "break", "slope", "putts", "holed", "share", "low", "high", "expected", "verdict", "more_needed"],
    rows: strengths.cells.map(cell => [cell.distance, cell.breaks, cell.slope, cell.putts, cell.made, cell.share, cell.low, cell.high, cell.expected, cell.verdict, cell.more_needed]) };
}
