// A green's speed drawn: across a day, and day by day. No page in here. What is sure to 95 in 100 is the band, or the bar.

import { svg } from "./draw.js";

const [LEFT, RIGHT, TOP, FOOT] = [44, 14, 14, 30];

/** Across one day: a step at each reading. @param lane as the host tells it */
export function dayPlot(into, lane, hourSaid) {
  const readings = lane.readings;
  const from = Math.min(...readings.map(each => each.at_ms));
  const to = Math.max(from + 3_600_000, ...readings.map(each => each.at_ms));
  const f = frame(into, readings, lane.range, from - (to - from) * 0.03, to + (to - from) * 0.03, 240);
  const hour = [1, 2, 3, 4, 6].find(each => (to - from) / 3_600_000 / each <= f.width / 80) ?? 8;
  const whole = lane.start_ms + Math.ceil((from - lane.start_ms) / 3_600_000) * 3_600_000; // by the studio's clock
  for (let ms = whole; ms <= to; ms += hour * 3_600_000) tick(into, f, f.x(ms), hourSaid(ms));
  const band = [...readings.map(each => `${f.x(each.at_ms)} ${f.y(each.high)}`), ...readings.toReversed().map(each => `${f.x(each.at_ms)} ${f.y(each.low)}`)];
  into.append(svg("path", { d: "M" + band.join("L") + "Z", class: "band" }),
    svg("path", { d: "M" + readings.map(each => `${f.x(each.at_ms)} ${f.y(each.ft)}`).join("L"), class: "line" }));
  for (const each of readings) into.append(svg("circle", { cx: f.x(each.at_ms), cy: f.y(each.ft), r: 3, class: "dot" }));
}

/** Day by day: each day's last reading with its bar; a triangle where it left the range; a test by rolled balls as a square. @param test null for none */
export function daysPlot(into, lane, test, daySaid) {
  const day = text => Date.parse(text + "T12:00:00Z") / 86_400_000;
  const all = [...lane.days.map(each => day(each.day)), ...(test ? [day(test.day)] : [])];
  const first = Math.min(...all);
  const last = Math.max(first + 6, ...all);
  const f = frame(into, [...lane.days.map(each => each.last), ...(test ? [test] : [])], lane.range, first - 0.7, last + 0.7, 220);
  const step = Math.ceil((last - first + 1) / Math.max(3, Math.floor(f.width / 90)));
  for (let each = Math.ceil(first); each <= last; each += step) tick(into, f, f.x(each), daySaid(new Date(each * 86_400_000).toISOString().slice(0, 10)));
  for (const each of lane.days) {
    const x = f.x(day(each.day));
    into.append(svg("line", { x1: x, x2: x, y1: f.y(each.last.low), y2: f.y(each.last.high), class: "bar" }),
      each.alert ? svg("path", { d: `M${x} ${f.y(each.last.ft) - 6}l6 10h-12z`, class: "out" }) : svg("circle", { cx: x, cy: f.y(each.last.ft), r: 4, class: "dot" }));
  }
  if (test) {
    const x = f.x(day(test.day)) + 7; // beside that day's own
    into.append(svg("line", { x1: x, x2: x, y1: f.y(test.low), y2: f.y(test.high), class: "test" }),
      svg("rect", { x: x - 4, y: f.y(test.ft) - 4, width: 8, height: 8, class: "test" }));
  }
}

function frame(into, speeds, range, left, right, height) {
  const width = Math.max(280, Math.round(into.getBoundingClientRect().width));
  const ends = [...speeds.flatMap(each => [each.low, each.high]), ...(range ? [range.low_ft, range.high_ft] : [])];
  const spread = Math.max(0.5, Math.max(...ends) - Math.min(...ends));
  const [low, high] = [Math.min(...ends) - spread * 0.12, Math.max(...ends) + spread * 0.12];
  const x = at => LEFT + (at - left) / (right - left) * (width - LEFT - RIGHT);
  const y = ft => TOP + (high - ft) / (high - low) * (height - TOP - FOOT);
  into.setAttribute("viewBox", `0 0 ${width} ${height}`);
  into.replaceChildren();
  const step = [0.1, 0.2, 0.5, 1, 2].find(each => (high - low) / each <= 7) ?? 5;
  for (let ft = Math.ceil(low / step) * step; ft <= high; ft += step) {
    into.append(svg("line", { x1: LEFT, x2: width - RIGHT, y1: y(ft), y2: y(ft), class: "grid" }),
      svg("text", { x: LEFT - 8, y: y(ft) + 4, "text-anchor": "end" }, ft.toFixed(1)));
  }
  into.append(svg("text", { x: 4, y: 12 }, "ft"));
  for (const ft of range ? [range.low_ft, range.high_ft] : []) {
    into.append(svg("line", { x1: LEFT, x2: width - RIGHT, y1: y(ft), y2: y(ft), class: "limit" }));
  }
  if (range) into.append(svg("text", { x: width - RIGHT, y: y(range.high_ft) - 5, "text-anchor": "end", class: "limit-said" }, "wanted"));
  return { x, y, width, height };
}

function tick(into, f, x, words) {
  into.append(svg("text", { x, y: f.height - 8, "text-anchor": "middle" }, words));
}
