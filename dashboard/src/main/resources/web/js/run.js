// One run, replayed putt by putt, with what was said of it and changed in it afterwards.

import { get, send, tell, trying } from "./api.js";
import { SAID, html, kindOf, mark } from "./draw.js";
import { ending, missSaid, named, result, tagsSaid, when } from "./logbook.js";
import { nav } from "./nav.js";
import { notes } from "./notes.js";
import { picture } from "./picture.js";
import { amended } from "./trail.js";
import { length } from "./units.js";
import { putt } from "./words.js";

const at = id => document.getElementById(id);
const path = "/api/run/" + location.pathname.split("/")[2];
const PACE_MS = 1_900;
let now = null;
let index = 0;
let playing = 0;

async function load() {
  const got = await trying(() => get(path));
  if (!got) {
    if (!now) at("what").textContent = "There is no such run, or it cannot be had at present.";
    return;
  }
  const first = now === null;
  now = got;
  if (first) index = Math.max(0, now.putts.findIndex(each => String(each.id) === location.hash.slice(1)));
  show();
}

function show() {
  const run = now.run;
  document.title = `${named(run.player)}, ${run.drill?.name ?? "run"}`;
  at("who").replaceChildren(run.player.name == null ? named(run.player) : html("a", { href: "/player/" + run.player.id }, run.player.name));
  set("what", [run.drill?.name ?? "A drill whose beginning is missing", tagsSaid(run), when(run.started_ms, now.zone), run.lane.replaceAll("-", " ")].filter(Boolean).join(" \u00b7 "));
  set("came", [result(run), ending(run), run.attempts ? `${run.holed} holed` : "", run.attempts ? "mean miss " + missSaid(run) : ""].filter(Boolean).join(", "));
  duel();
  at("replay").hidden = now.putts.length === 0;
  if (now.putts.length === 0) set("what", at("what").textContent + ". No putt of it has come yet.");
  at("at").max = now.putts.length - 1;
  step(Math.min(index, now.putts.length - 1), false);
  notes(at("notes"), now.notes, { on: path + "/notes", zone: now.zone, title: "A note on this run", changed: load });
  at("trail").replaceChildren(...now.trail.map(each => amended(each, now.zone)));
  at("key").replaceChildren(...["in", "miss", "past"].map(kind => html("span", {}, mark(kind), SAID[kind])));
}

function duel() {
  const others = now.duel.filter(each => each.id !== now.run.id);
  at("duel").hidden = others.length === 0;
  const won = now.run.won === true ? "Won against " : now.run.won === false ? "Lost against " : "In a duel with ";
  at("duel").replaceChildren(won, ...others.flatMap((each, i) => [i ? ", " : "", html("a", { href: "/run/" + each.id }, named(each.player))]));
}

/** Shows the putt of a number; roll: the ball rolls in. */
function step(to, roll) {
  if (now.putts.length === 0) return;
  index = Math.max(0, Math.min(now.putts.length - 1, to));
  const each = now.putts[index];
  const words = putt(each.attempt, now.run.limit_mm);
  at("putt-said").dataset.end = words.end;
  at("putt-said").replaceChildren(html("b", {}, words.key), words.rest,
    html("small", {}, [`Putt ${index + 1} of ${now.putts.length}`, `station ${each.station}, ${length(each.station_mm)}`, ...(each.counts ? [] : ["does not count"]), ...words.details].join(", ")));
  picture(at("line"), { limit_mm: now.run.limit_mm ?? undefined }, each.attempt, roll);
  at("at").value = index;
  at("at").setAttribute("aria-valuetext", `putt ${index + 1}, ${words.key}`);
  at("back").disabled = index === 0;
  at("next").disabled = index === now.putts.length - 1;
  visits();
  about(each);
}

/** Each stay at a station a line, each putt a button. */
function visits() {
  const stays = [];
  now.putts.forEach((each, i) => {
    const last = stays[stays.length - 1];
    if (last && last.visit === each.visit) last.putts.push([each, i]);
    else stays.push({ visit: each.visit, station: each.station, mm: each.station_mm, putts: [[each, i]] });
  });
  const had = document.activeElement?.closest?.("#visits button")?.dataset.index;
  at("visits").replaceChildren(...stays.map(stay => html("li", {}, html("span", {}, html("b", {}, "Station " + stay.station), length(stay.mm)),
    html("ol", {}, ...stay.putts.map(([each, i]) => html("li", {}, button(each, i)))))));
  if (had != null) at("visits").querySelector(`[data-index="${had}"]`)?.focus();
}

function button(each, i) {
  const kind = kindOf(each.attempt);
  const said = `Putt ${i + 1}, ${SAID[kind]}` + (each.counts ? "" : ", does not count") + (each.notes.length ? ", noted" : "");
  const made = html("button", { type: "button", "aria-label": said, "aria-current": i === index ? "true" : null, "data-index": i,
    "data-void": !each.counts, "data-noted": each.notes.length > 0 }, mark(kind));
  made.addEventListener("click", () => { stop(); step(i, true); });
  return made;
}

/** What was said of a putt and changed in it, and how to change it. */
function about(each) {
  at("putt-trail").replaceChildren(...each.trail.map(one => amended(one, now.zone)));
  at("correct-do").textContent = each.counts ? "Does not count" : "Counts after all";
  at("reason-of").textContent = each.counts ? "Why it should not count" : "Why it should count";
  notes(at("putt-notes"), each.notes, { on: `/api/attempt/${each.id}/notes`, zone: now.zone, title: "A note on this putt", changed: load });
}

function play() {
  if (playing) return stop();
  at("play").textContent = "Stop";
  at("play").setAttribute("aria-pressed", "true");
  step(index === now.putts.length - 1 ? 0 : index, true);
  playing = setInterval(() => {
    if (index === now.putts.length - 1) stop();
    else step(index + 1, true);
  }, PACE_MS);
  return undefined;
}

function stop() {
  clearInterval(playing);
  playing = 0;
  at("play").textContent = "Play";
  at("play").setAttribute("aria-pressed", "false");
}

function set(id, text) {
  if (at(id).textContent !== text) at(id).textContent = text;
}

at("play").addEventListener("click", play);
at("back").addEventListener("click", () => { stop(); step(index - 1, true); });
at("next").addEventListener("click", () => { stop(); step(index + 1, true); });
at("at").addEventListener("input", () => { stop(); step(Number(at("at").value), false); });
at("correct").addEventListener("submit", event => {
  event.preventDefault();
  const each = now.putts[index];
  trying(async () => {
    await send("POST", `/api/attempt/${each.id}/${each.counts ? "void" : "restore"}`, { reason: at("reason").value.trim() || null });
    at("reason").value = "";
    tell(each.counts ? "The putt does not count any more." : "The putt counts again.");
    await load();
  });
});
at("reassign").addEventListener("submit", event => {
  event.preventDefault();
  trying(async () => {
    await send("POST", path + "/reassign", { player: at("player").value.trim(), reason: at("why").value.trim() || null });
    tell("The run is theirs now.");
    at("reassign").reset();
    await load();
  });
});
at("player").addEventListener("input", async () => {
  const found = await get("/api/players?name=" + encodeURIComponent(at("player").value.trim())).catch(() => null);
  if (found) at("names").replaceChildren(...found.rows.slice(0, 12).map(each => html("option", { value: each.name })));
});
nav("/runs", () => now && show());
new ResizeObserver(() => now?.putts.length && picture(at("line"), { limit_mm: now.run.limit_mm ?? undefined }, now.putts[index].attempt, false)).observe(at("line"));
load();
