// What to practise next, on one page to be printed: the advice with its reasons, the make curve and the sessions.

import { get, trying } from "./api.js";
import { html } from "./draw.js";
import { named, query, when } from "./logbook.js";
import { nav } from "./nav.js";
import { curvePlot } from "./plot-curve.js";
import { turnsPlot } from "./plot-turns.js";
import { useFeet, usesFeet } from "./units.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const id = location.pathname.split("/")[2];
const wanted = new URLSearchParams(location.search);
let now = null;

async function load() {
  const got = await trying(() => get(`/api/insight/${id}` + query({ drill: wanted.get("drill"), balls: wanted.get("balls"), units: usesFeet() ? "feet" : "metric" })));
  if (!got) {
    at("wait").textContent = "There is no such player, or their numbers cannot be had at present.";
    return;
  }
  const other = !now && got.player.units && (got.player.units === "feet") !== usesFeet() && !wanted.has("units");
  now = got;
  if (other) {
    useFeet(got.player.units === "feet");
    load();
    return;
  }
  show();
}

function show() {
  document.title = "Advice for " + named(now.player);
  at("back").href = "/insight/" + id;
  at("name").textContent = named(now.player);
  at("wait").hidden = now.putts > 0;
  at("wait").textContent = "No putts yet, so there is nothing to advise.";
  at("sheet").hidden = now.putts === 0;
  if (now.putts === 0) return;
  at("rests").textContent = `From ${now.putts.toLocaleString()} putts in ${counted(now.sessions, "session", "sessions")}.`;
  at("advice").replaceChildren(...now.advice.map(each => html("li", {}, html("b", {}, each.what), html("p", {}, each.because), html("p", { class: "quiet" }, "Rule: " + each.rule))));
  at("curve-said").textContent = now.curve.said[0];
  at("turns-said").textContent = now.time.said[0];
  at("foot").textContent = `Advice follows from the putts by stated rules; it is no promise. Cupbeam, made on ${when(Date.now(), now.zone)}.`;
  draw();
}

function draw() {
  curvePlot(at("curve"), now.curve);
  if (now.time.points.length > 0) turnsPlot(at("turns"), now.time, now.zone);
}

at("print").addEventListener("click", () => print());
nav("/insight", () => now && load());
new ResizeObserver(() => now && now.putts > 0 && draw()).observe(at("curve").closest("section"));
load();
