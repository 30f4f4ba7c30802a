// What the numbers say of one player: five plots, each with its sentences and its numbers, and what to do next.

import { get, trying } from "./api.js";
import { html } from "./draw.js";
import { named, query, when } from "./logbook.js";
import { nav } from "./nav.js";
import { curveNumbers, curvePlot } from "./plot-curve.js";
import { finishKey, finishNumbers, finishPlot } from "./plot-finish.js";
import { gridNumbers, gridPlot } from "./plot-grid.js";
import { runNumbers, runPlot } from "./plot-run.js";
import { turnsNumbers, turnsPlot } from "./plot-turns.js";
import { takeAway } from "./take.js";
import { length, useFeet, usesFeet } from "./units.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const id = location.pathname.split("/")[2];
const wanted = new URLSearchParams(location.search);
const FEW = 60;
let now = null;
let asked = 0;

const PLOTS = {
  curve: { draw: into => curvePlot(into, now.curve), numbers: () => curveNumbers(now.curve), said: () => now.curve.said, any: () => true },
  turns: { draw: into => turnsPlot(into, now.time, now.zone), numbers: () => turnsNumbers(now.time), said: () => now.time.said, any: () => now.time.points.length > 0 },
  grid: { draw: into => gridPlot(into, now.strengths), numbers: () => gridNumbers(now.strengths), said: () => now.strengths.said, any: () => now.putts > 0 },
  finish: { draw: into => finishPlot(into, now.finishes), numbers: () => finishNumbers(now.finishes), said: () => [...now.finishes.said, finishKey(now.finishes)], any: () => now.finishes.misses.length > 0 },
  run: { draw: into => runPlot(into, now.run), numbers: () => runNumbers(now.run), said: runSaid, any: () => now.run.at_least.length > 0 },
};

function units() {
  return usesFeet() ? "feet" : "metric";
}

function asking() {
  return { drill: wanted.get("drill"), balls: wanted.get("balls"), bench: wanted.get("bench"), against: wanted.get("against"), units: units() };
}

async function load() {
  const mine = ++asked;
  const got = await trying(() => get(`/api/insight/${id}` + query(asking())));
  if (mine !== asked) return;
  if (!got) {
    if (!now) at("said").textContent = "There is no such player, or their numbers cannot be had at present.";
    return;
  }
  if (!now && got.player.units && got.player.units !== units() && !wanted.has("units")) {
    useFeet(got.player.units === "feet");
    now = got;
    load();
    return;
  }
  now = got;
  show();
}

function show() {
  document.title = "What the numbers say of " + named(now.player);
  at("back").href = "/player/" + id;
  at("back").textContent = named(now.player);
  at("name").textContent = "What the numbers say of " + named(now.player);
  at("advice-page").href = `/advice/${id}` + query({ drill: wanted.get("drill"), balls: wanted.get("balls") });
  at("said").textContent = restsOn();
  at("all").hidden = false;
  at("drill").replaceChildren(...now.drills.map(each => html("option", { value: each.key, selected: each.key === now.drill }, each.name)));
  at("balls").replaceChildren(...Array.from({ length: 12 }, (_, i) => html("option", { value: i + 1, selected: i + 1 === now.balls }, String(i + 1))));
  at("bench").value = wanted.get("bench") ?? "both";
  for (const [name, plot] of Object.entries(PLOTS)) {
    at(name + "-said").replaceChildren(...plot.said().map(words => html("li", {}, words)));
    at(name).closest("figure").hidden = !plot.any();
    at(name + "-take").hidden = !plot.any();
  }
  at("sources").replaceChildren(...now.curve.sources.map(words => html("li", {}, words)));
  at("advice").replaceChildren(...now.advice.map(each => html("li", {}, html("b", {}, each.what), html("p", {}, each.because), html("p", { class: "quiet" }, "Rule: " + each.rule))));
  places();
  duel();
  draw();
}

function restsOn() {
  if (now.putts === 0) return "No putts yet.";
  const all = `${now.putts.toLocaleString()} putts in ${counted(now.sessions, "session", "sessions")}`;
  const since = now.now_putts < now.putts ? `; of how the player putts now, ${now.now_putts.toLocaleString()} since ${when(now.from_ms, now.zone, { day: "numeric", month: "long", year: "numeric" })}` : "";
  return all + since + (now.putts < FEW ? ". Too few to say much: the bands are wide, and hold what is likely of anybody." : ".");
}

function draw() {
  for (const [name, plot] of Object.entries(PLOTS)) {
    if (!plot.any()) continue;
    plot.draw(at(name));
    takeAway(at(name + "-take"), `${name}-${id}`, at(name), plot.numbers());
  }
}

function runSaid() {
  const runs = now.run.runs.slice(-4).map(each => each.said);
  const fair = now.run.fair;
  const other = fair?.options.slice(0, 3).map(each => `${counted(each.balls, "ball", "balls")} ${each.supply}: ${Math.round(100 * each.chance)} in 100`) ?? [];
  return [...now.run.said, ...(runs.length ? [`Of the last day, ${now.run.day}:`, ...runs] : now.run.day ? [`No run of this drill, with so many balls, ended on the last day (${now.run.day}).`] : []),
    ...(fair ? [fair.said, `The fairest of all, to clear station ${fair.station}: ${other.join("; ")}.`] : [])];
}

function places() {
  const choices = [915, 1_524, 1_829, 2_438, 3_048, 3_658, 4_572, 6_096];
  const chosen = at("far").value || "1829";
  at("far").replaceChildren(...choices.map(mm => html("option", { value: mm, selected: String(mm) === chosen }, length(mm))));
  next();
}

async function next() {
  const got = await trying(() => get(`/api/insight/${id}/next` + query({ ...asking(), against: null, distance_mm: at("far").value, putts: at("so-many").value })));
  if (got) at("next-said").textContent = got.said + " (Four cases of five.)";
}

function duel() {
  const said = now.run.duel;
  at("duel-said").replaceChildren(...(said ? [said.said, said.head_start_said] : []).map(words => html("li", {}, words)));
}

async function rivals() {
  const got = await trying(() => get("/api/players"));
  at("against").append(...(got?.rows ?? []).filter(each => String(each.id) !== id).map(each => html("option", { value: each.id, selected: String(each.id) === wanted.get("against") }, each.name)));
}

function ask(name, value) {
  if (value === "" || value == null) wanted.delete(name);
  else wanted.set(name, value);
  if (name === "drill") wanted.delete("balls");
  history.replaceState(null, "", wanted.size ? "?" + wanted : location.pathname);
  load();
}

for (const name of ["drill", "balls", "bench", "against"]) at(name).addEventListener("change", () => ask(name, at(name).value));
for (const name of ["far", "so-many"]) at(name).addEventListener("change", next);
for (const name of ["asked", "next", "duel"]) at(name).addEventListener("submit", event => event.preventDefault());
nav("/insight", () => now && load());
let width = 0;
new ResizeObserver(() => {
  if (now && Math.abs(at("main").clientWidth - width) > 2) {
    width = at("main").clientWidth;
    draw();
  }
}).observe(at("main"));
rivals();
load();
