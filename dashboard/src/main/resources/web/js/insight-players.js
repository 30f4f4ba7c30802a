// Whose numbers? Those who were here last, or whose name is looked for.

import { get, trying } from "./api.js";
import { html } from "./draw.js";
import { day, query } from "./logbook.js";
import { nav } from "./nav.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
let asked = 0;

async function load() {
  const mine = ++asked;
  const got = await trying(() => get("/api/players" + query({ name: at("who").value.trim() })));
  if (!got || mine !== asked) return;
  at("said").textContent = got.rows.length === 0 ? "Nobody is called so." : "A player's putts, plotted and told: how likely, against whom, when it turned, what is weak, what next.";
  at("players").replaceChildren(...got.rows.map(each => html("li", {}, html("a", { href: "/insight/" + each.id }, html("b", {}, each.name),
    html("span", { class: "quiet" }, each.last_ms == null ? "never played" : `${counted(each.runs, "run", "runs")}, last ${day(each.last_ms, got.zone)}`)))));
}

at("who").addEventListener("input", load);
at("search").addEventListener("submit", event => event.preventDefault());
nav("/insight");
load();
