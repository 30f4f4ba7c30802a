// One session of one player on one page, to be read and to be printed.

import { get, trying } from "./api.js";
import { html } from "./draw.js";
import { missSaid, named, percent, result, when } from "./logbook.js";
import { nav } from "./nav.js";
import { stops, stopsSaid } from "./stops.js";
import { length, useFeet, usesFeet } from "./units.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const id = location.pathname.split("/")[2];
const MOST_RUNS = 10;
const MOST_DISTANCES = 11;
const MOST_STEPS = 3;
let now = null;

async function load(wanted) {
  const got = await trying(() => get(`/api/report/${id}` + (wanted ? "?day=" + encodeURIComponent(wanted) : "")));
  if (!got) {
    at("wait").textContent = "This report cannot be had.";
    return;
  }
  if (!now && got.player.units && !new URLSearchParams(location.search).has("units")) useFeet(got.player.units === "feet");
  now = got;
  show();
  next();
}

/** The first few steps that follow from all of the player's putts. */
async function next() {
  const got = await trying(() => get(`/api/insight/${id}?units=${usesFeet() ? "feet" : "metric"}`));
  at("advised").hidden = !got || got.putts === 0 || got.advice.length === 0;
  at("next").replaceChildren(...(got?.advice ?? []).slice(0, MOST_STEPS).map(each => html("li", {}, html("b", {}, each.what), " ", each.because)));
}

function show() {
  const player = now.player;
  const date = new Date(now.day + "T12:00:00Z").toLocaleDateString(undefined, { weekday: "long", day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });
  document.title = `${named(player)} ${now.day}`;
  at("back").href = "/player/" + id;
  at("back").textContent = named(player);
  at("day").replaceChildren(...now.days.map(each => html("option", { value: each, selected: each === now.day }, each)));
  at("name").textContent = named(player);
  const lanes = [...new Set(now.runs.map(run => run.lane.replaceAll("-", " ")))];
  at("date").textContent = [date, lanes.length ? (lanes.length > 1 ? "lanes " : "lane ") + lanes.join(", ") : "", player.hand ? player.hand + "-handed" : ""].filter(Boolean).join(" \u00b7 ");
  const putts = now.putts.filter(each => each.counts);
  at("wait").hidden = putts.length > 0;
  at("wait").textContent = "Nothing was played on this day.";
  at("sheet").hidden = putts.length === 0;
  if (putts.length === 0) return;
  figures(putts);
  distances(putts);
  runs();
  at("stops-said").textContent = stopsSaid(putts);
  draw();
  at("noted").hidden = now.notes.length === 0;
  at("notes").replaceChildren(...now.notes.map(note => html("li", {}, html("p", { class: "words" }, note.words), html("p", { class: "quiet" }, note.author))));
  at("foot").textContent = `Cupbeam, made on ${when(Date.now(), now.zone)}.`;
}

function draw() {
  const putts = now.putts.filter(each => each.counts);
  const limits = now.runs.map(run => run.limit_mm).filter(mm => mm != null);
  stops(at("stops"), putts.filter(each => each.attempt.outcome !== "holed"), limits.length && Math.min(...limits) === Math.max(...limits) ? limits[0] : null);
}

function figures(putts) {
  const holed = putts.filter(each => each.attempt.outcome === "holed").length;
  const far = putts.filter(each => each.attempt.overshoot).length;
  const misses = putts.filter(each => each.attempt.finish_mm != null);
  const mean = misses.reduce((sum, each) => sum + Math.abs(each.attempt.finish_mm), 0) / misses.length;
  const best = now.runs.filter(run => run.stations_cleared != null).sort((a, b) => b.stations_cleared - a.stations_cleared || a.attempts - b.attempts)[0];
  const shown = [
    ["Putts", String(putts.length), counted(now.runs.length, "run", "runs")],
    ["Holed", percent(holed, putts.length), `${holed} of ${putts.length}`],
    ["Mean miss", misses.length ? length(mean) : "none", misses.length ? `of ${misses.length} measured` : ""],
    ["Past the limit", String(far), putts.length > holed ? percent(far, putts.length - holed) + " of the misses" : ""],
    ["Furthest run", best ? counted(best.stations_cleared, "station", "stations") : "none ended", best ? `in ${counted(best.attempts, "putt", "putts")}` : ""],
  ];
  at("figs").replaceChildren(...shown.map(([name, value, more]) => html("div", {}, html("dt", {}, name), html("dd", {}, html("b", {}, value), html("span", {}, more)))));
}

/** Distances as they were putted from; joined where there are too many for a page. */
function distances(putts) {
  const step = [1, 100, 250, 500, 1_000, 2_000, 4_000].map(mm => usesFeet() && mm > 1 ? mm * 1.2192 : mm)
    .find(mm => new Set(putts.map(each => Math.floor(each.station_mm / mm))).size <= MOST_DISTANCES) ?? 10_000;
  const groups = new Map();
  for (const each of putts) {
    const key = Math.floor(each.station_mm / step);
    const group = groups.get(key) ?? groups.set(key, { mm: [], putts: 0, holed: 0, was: 0, wasHoled: 0 }).get(key);
    group.mm.push(each.station_mm);
    group.putts++;
    if (each.attempt.outcome === "holed") group.holed++;
  }
  for (const each of now.usual) {
    const group = groups.get(Math.floor(each.station_mm / step));
    if (group) [group.was, group.wasHoled] = [group.was + each.putts, group.wasHoled + each.holed];
  }
  at("far").replaceChildren(...[...groups].sort((a, b) => a[0] - b[0]).map(([, group]) => distance(group)));
  at("far-said").textContent = now.usual.length === 0 ? "Few putts tell little: of ten, a share swings by some 15 points either way by chance alone."
    : `Before: the ${now.usual_days} days until then, ${counted(now.usual_putts.toLocaleString(), "putt", "putts")}; the mark on the bar. Few putts tell little.`;
}

function distance(group) {
  const [low, high] = [Math.min(...group.mm), Math.max(...group.mm)];
  const from = length(low) === length(high) ? length(low) : `${length(low)} to ${length(high)}`;
  const bar = html("div", { class: "bar" });
  const filled = html("div", { class: "filled" });
  filled.style.width = 100 * group.holed / group.putts + "%";
  bar.append(filled);
  if (group.was > 0) {
    const tick = html("div", { class: "tick" });
    tick.style.left = 100 * group.wasHoled / group.was + "%";
    bar.append(tick);
  }
  return html("tr", {}, html("th", { scope: "row" }, from), html("td", { class: "n" }, `${group.holed} of ${group.putts}`),
    html("td", { class: "bars" }, bar), html("td", { class: "n" }, group.was > 0 ? percent(group.wasHoled, group.was) : ""));
}

function runs() {
  const shown = now.runs.slice(0, MOST_RUNS).reverse();
  at("runs").replaceChildren(...shown.map(run => html("tr", {}, html("td", {}, when(run.started_ms, now.zone, { hour: "2-digit", minute: "2-digit" })),
    html("td", {}, run.drill?.name ?? ""), html("td", {}, result(run) + (run.won === true ? ", won" : run.won === false ? ", lost" : "")), html("td", { class: "n" }, missSaid(run)))));
  at("runs-said").textContent = now.runs.length > MOST_RUNS ? `The last ${MOST_RUNS} of ${now.runs.length} runs.` : "";
}

at("print").addEventListener("click", () => print());
at("day").addEventListener("change", () => {
  history.replaceState(null, "", "?day=" + at("day").value);
  load(at("day").value);
});
nav("/players", () => { if (now) { show(); next(); } });
new ResizeObserver(() => now && draw()).observe(at("stops"));
load(new URLSearchParams(location.search).get("day"));
