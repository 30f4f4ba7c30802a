// The board of one lane: takes what the stream says, and shows it.

import { choices } from "./choice.js";
import { html, kindOf, mark } from "./draw.js";
import { watch } from "./live.js";
import { picture } from "./picture.js";
import { rows } from "./rows.js";
import { sound, tone } from "./sound.js";
import { length, parts } from "./units.js";
import { beamsSaid, counted, endedBy, putt, standing, tags } from "./words.js";

const at = id => document.getElementById(id);
const SHORT = 24;
const [, , studio, laneName] = location.pathname.split("/");
const state = { score: null, health: null, best: null, there: false, broker: true, seen: null };

function show(fresh = false) {
  link();
  if (state.score) {
    header(state.score);
    turn(state.score);
    last(state.score, fresh);
    runs(state.score);
  }
  best();
  at("ways").toggleAttribute("data-idle", !state.score?.players.length);
}

/** Whether what is shown is what is; and if not, what stands between. */
function link() {
  const [now, said, alarm] = standing(state);
  document.body.classList.toggle("stale", now === "away" && state.score != null);
  at("link").dataset.state = now;
  set("link-said", said);
  at("alarm").hidden = alarm === "";
  at("alarm").toggleAttribute("data-quiet", now !== "away");
  set("alarm", alarm);
}

function header(score) {
  const game = at("game");
  const tagged = tags(score.tags);
  game.replaceChildren(...(score.drill ? [html("b", {}, unbroken(score.drill.name)), tagged ? "\u2002" + unbroken(tagged) : ""] : []));
  const green = score.green;
  set("speed", green ? `Green speed ${green.stimp_ft.toFixed(1)}\u00a0\u00b1\u00a0${Math.max(0.1, green.stimp_sd_ft).toFixed(1)}` : "");
}

/** The words of a short part stay together: a line breaks after a comma. */
function unbroken(words) {
  return words.split(", ").map((part, i) => i > 0 && part.length <= SHORT ? part.replaceAll(" ", "\u00a0") : part).join(", ");
}

function turn(score) {
  const section = at("turn");
  section.toggleAttribute("data-calm", score.state !== "playing");
  at("balls").hidden = score.state !== "playing";
  if (score.state === "playing" && score.players.length) {
    playing(score, score.players[score.turn ?? 0]);
  } else if (score.state === "over" && score.players.length) {
    over(score);
  } else {
    says("Free putting", "Ready");
    set("far", "");
    set("station", "No drill is set. Every putt is still seen and kept.");
  }
}

function playing(score, player) {
  says("To putt", player.player);
  distance(player.station_mm);
  const of = stations(score.drill);
  set("station", `Station ${player.station}${of ? " of " + of : ""}`);
  const total = Math.max(score.drill?.balls?.count ?? 0, player.balls_left);
  const drawn = total <= 14 ? total : 0;
  at("balls-drawn").replaceChildren(...Array.from({ length: drawn }, (_, i) =>
    html("li", { class: i < player.balls_left ? "left" : "" })));
  const inRun = player.balls_in_run != null && player.balls_in_run !== player.balls_left
    ? `, ${player.balls_in_run} in the run` : "";
  set("balls-said", counted(player.balls_left, "ball left", "balls left") + inRun);
}

function over(score) {
  const duel = score.players.length > 1;
  const player = score.players[0];
  says(duel ? "Duel over" : "Run over", duel ? (score.winner ? score.winner + " wins" : "Nobody wins") : player.player);
  const shown = duel ? score.players.find(each => each.player === score.winner) ?? player : player;
  at("far").replaceChildren(String(shown.stations_cleared), html("small", {}, shown.stations_cleared === 1 ? "station" : "stations"));
  const why = duel ? "" : endedBy(player.ended_by);
  set("station", `in ${counted(shown.attempts, "putt", "putts")}${why ? ", " + why : ""}. The next putt begins anew.`);
}

function says(eyebrow, name) {
  set("turn-said", eyebrow);
  set("name", name);
  at("name").style.setProperty("--size", name.length > 24 ? 4.6 : name.length > 12 ? 6 : 8.4);
}

function distance(mm) {
  const shown = [];
  const all = parts(mm);
  for (let i = 0; i < all.length; i += 2) shown.push(all[i], html("small", {}, all[i + 1]));
  at("far").replaceChildren(...shown);
}

function last(score, fresh) {
  const attempt = score.last?.attempt ?? null;
  const said = at("said");
  if (attempt) {
    const words = putt(attempt, score.limit_mm);
    const by = score.last.player;
    set("last-of", "Last putt" + (by ? `: ${by}, ${length(score.last.station_mm)}` : ""));
    said.dataset.end = words.end;
    said.replaceChildren(html("span", {}, html("b", {}, words.key), words.rest), html("span", { class: "how" }, words.details.join(", ")));
  } else {
    said.replaceChildren("None yet");
  }
  picture(at("line"), score, attempt, fresh);
  set("beams-said", beamsSaid(score.beams));
  if (fresh) {
    document.body.classList.remove("fresh");
    requestAnimationFrame(() => document.body.classList.add("fresh"));
  }
}

function runs(score) {
  const players = score.players;
  at("runs").hidden = players.length === 0;
  set("runs-of", players.length > 1 ? "Duel" : "The run so far");
  set("deciding", rows(at("rows"), score));
}

function best() {
  const run = state.best;
  const text = [];
  if (run) {
    const when = new Date(run.day + "T12:00:00Z").toLocaleDateString(undefined, { day: "numeric", month: "long", timeZone: "UTC" });
    text.push("Best to beat: ", html("b", {}, run.player ?? "somebody"),
      `, ${counted(run.stations_cleared, "station", "stations")} in ${counted(run.attempts, "putt", "putts")}, ${when}`);
  } else if (state.score?.drill) {
    text.push("No run of this drill is on record yet: this one sets the mark.");
  }
  at("best").replaceChildren(...text);
}

function stations(drill) {
  return drill?.stations?.count ?? drill?.stations?.at_mm?.length ?? 0;
}

function set(id, text) {
  if (at(id).textContent !== text) at(id).textContent = text; // unchanged words are not read out again
}

function legend() {
  const shown = [["in", "in the hole"], ["miss", "missed"], ["past", "past the limit"], ["to-come", "ball to come"], ["beam", "light beam"]];
  at("legend").replaceChildren(...shown.map(([kind, name]) => html("span", {}, mark(kind), name)));
}

const title = laneName.replaceAll("-", " ");
document.title = title + " board";
set("lane", title.charAt(0).toUpperCase() + title.slice(1));
choices(at("units"), at("light"), () => show());
sound(at("sound"));
at("control").href = `/control/${studio}/${laneName}`;
at("start").href = at("control").href + "#new";
legend();
new ResizeObserver(() => state.score && picture(at("line"), state.score, state.score.last?.attempt ?? null, false)).observe(at("line"));
show();

watch(`/live/${studio}/${laneName}`, {
  there: there => { if (state.there !== there) { state.there = there; link(); } },
  pulse: pulse => { state.broker = pulse.broker; link(); },
  health: health => { state.health = health; link(); },
  best: run => { state.best = run; best(); },
  score: score => {
    const fresh = state.seen !== null && score.last != null && score.last.sequence > state.seen;
    state.seen = score.last?.sequence ?? "";
    state.score = score;
    show(fresh);
    if (fresh) tone(kindOf(score.last.attempt));
  },
});
