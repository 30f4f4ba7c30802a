// Running one lane from a phone.

import { hush } from "./api.js";
import { lastInShort, showPlay } from "./control-play.js";
import * as record from "./control-record.js";
import * as start from "./control-start.js";
import { lead, without } from "./focus.js";
import { watch } from "./live.js";
import { nav } from "./nav.js";
import { order, twice, waiting } from "./orders.js";
import { length, usesFeet } from "./units.js";
import { standing } from "./words.js";

const at = id => document.getElementById(id);
const [, , studio, laneName] = location.pathname.split("/");
const lane = studio + "/" + laneName;
const state = { score: null, health: null, there: false, broker: true, setting: null };

function show() {
  without(draw, state.setting ? [at("who-of")] : [at("again"), at("miss-open")]);
}

function draw() {
  const [now, said, alarm] = standing(state);
  at("link").dataset.state = now;
  at("link").textContent = said;
  at("alarm").hidden = alarm === "";
  at("alarm").textContent = alarm;
  document.body.toggleAttribute("data-away", now === "away");
  if (!state.score) return;
  state.setting ??= state.score.players.length === 0;
  at("start").hidden = !state.setting;
  at("play").hidden = state.setting;
  saidIn(at(state.setting ? "go-bar" : "acts"));
  at("not-now").hidden = state.score.players.length === 0 && !state.score.last;
  showPlay(state.score);
  start.note(state.score);
  showActs(state.score);
}

/** What is said has a row of its own in the bar at the thumb, over nothing that could be touched. */
function saidIn(bar) {
  if (at("told").parentElement !== bar) bar.prepend(at("told"));
}

function showActs(score) {
  const playing = score.state === "playing";
  const inPlay = score.players.filter(each => !each.ended_by).length;
  at("take-back").disabled = !score.last;
  at("pass").hidden = !(playing && inPlay > 1);
  at("end").hidden = !(playing && score.players.some(each => each.attempts > 0));
  at("again-row").hidden = score.state !== "over";
  sayMiss();
}

/** Asks for something that makes sense only where the lane still is as this page shows it. */
function now(ask, done) {
  return order(lane, { expect: state.score.sequence, ...ask }, done);
}

function setUp(wanted) {
  state.setting = wanted;
  if (wanted) start.open(state.score);
  show();
  scrollTo(0, 0);
  lead(wanted ? [at("who-of")] : [at("new")]);
}

start.prepare(async game => {
  const names = game.players.length === 1 ? game.players[0] + " is playing." : game.players.join(" against ") + ".";
  if (await now({ command: "start", ...game }, { words: `Started: ${names}` })) {
    state.setting = false;
    show();
    scrollTo(0, 0);
    lead([at("name")]);
  }
});

const undoMiss = sequence => order(lane, { command: "take-back", expect: sequence }, { words: "Taken back." });

function missAt() {
  return Number(at("miss-at").value) * (usesFeet() ? 50.8 : 50);
}

function sayMiss() {
  const mm = missAt();
  const limit = state.score?.limit_mm ?? Infinity;
  at("miss-said").textContent = mm === 0 ? "beside the hole" : length(mm) + (mm < 0 ? " short" : " past the hole") + (mm > limit ? ", past the limit" : "");
  at("miss-enter").textContent = "Enter " + (mm === 0 ? "beside the hole" : length(mm) + (mm < 0 ? " short" : " past"));
}

function openMiss(wanted) {
  hush();
  at("miss").hidden = !wanted;
  at("miss-open").setAttribute("aria-expanded", String(wanted));
  if (wanted) at("miss-short").focus({ preventScroll: true });
}

async function miss(finishMm, words) {
  openMiss(false);
  at("miss-open").focus({ preventScroll: true });
  // Whoever looked down at the putts before wants to see next whose turn it is.
  if (await now({ command: "miss", finish_mm: finishMm }, { words: "Entered: " + words, undo: undoMiss })) scrollTo(0, 0);
}

at("miss-open").addEventListener("click", () => openMiss(at("miss").hidden));
at("miss-not").addEventListener("click", () => { openMiss(false); at("miss-open").focus(); });
at("miss-at").addEventListener("input", sayMiss);
for (const [id, by] of [["miss-less", -1], ["miss-more", 1]]) {
  at(id).addEventListener("click", () => { at("miss-at").valueAsNumber += by; sayMiss(); });
}
at("miss-short").addEventListener("click", () => miss(null, "a miss, short."));
at("miss").addEventListener("submit", event => {
  event.preventDefault();
  miss(missAt(), "a miss, " + at("miss-said").textContent + ".");
});

twice(at("take-back"), () => "Yes, " + lastInShort(state.score), () => now({ command: "take-back" }, { words: "Taken back. The game stands as before that putt." }));
twice(at("end"), () => "Yes, stop here", () => now({ command: "end" }, { words: "Stopped. The score stands." }));
twice(at("again"), () => "Yes, start again", () => now({ command: "start", drill: state.score.drill, players: state.score.players.map(each => each.player), tags: state.score.tags },
  { words: "Started anew." }));
at("new").addEventListener("click", () => setUp(true));
at("not-now").addEventListener("click", () => setUp(false));
at("pass").addEventListener("click", () => pass());

async function pass() {
  const before = state.score;
  const others = before.players.filter(each => !each.ended_by).length - 1;
  await now({ command: "pass" }, { words: before.players[before.turn].player + " is passed over for now.", undo: others === 1
    ? sequence => order(lane, { command: "pass", expect: sequence }, { words: `It is ${before.players[before.turn].player}'s turn again.` }) : null });
}

const title = laneName.replaceAll("-", " ");
document.title = "Control: " + title;
at("lane").textContent = title.charAt(0).toUpperCase() + title.slice(1);
at("board").href = `/board/${lane}`;
nav("/control", () => { start.sayAgain(); show(); record.show(lane); });
document.addEventListener("click", event => {
  if (waiting() && event.target.closest(".acts button, #go")) event.stopPropagation();
}, true);

watch(`/live/${lane}`, {
  there: there => { if (state.there !== there) { state.there = there; show(); } },
  pulse: pulse => { state.broker = pulse.broker; show(); },
  health: health => { state.health = health; show(); },
  best: () => {},
  score: score => {
    const first = !state.score;
    state.score = score;
    if (first && (score.players.length === 0 || location.hash === "#new")) {
      state.setting = true;
      start.open(score);
      history.replaceState(null, "", location.pathname + location.search); // looked at again later, the game is shown
    }
    show();
    record.refresh(lane, first ? 0 : 500);
  },
});
