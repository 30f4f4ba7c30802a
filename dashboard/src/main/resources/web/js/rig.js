// One lane's health, live, and the trial of its sensors.

import { html } from "./draw.js";
import { watch } from "./live.js";
import { nav } from "./nav.js";
import { quietHeard, quietShow, quietStart } from "./quiet.js";
import { BAD, STATES, ago, called, fitted, place, plan, sign } from "./sensors.js";
import { begin, heard, outcome, scored, verdicts } from "./trial.js";
import { length } from "./units.js";
import { counted, putt } from "./words.js";

const at = id => document.getElementById(id);
const [, , studio, lane] = location.pathname.split("/");
const SILENT_S = 16; // a lane speaks every 5 s
const state = { there: false, broker: true, health: null, heard: null, score: null, trial: null };
const now = () => performance.now() / 1000;

function show() {
  link();
  const rows = sensors();
  at("sensors").replaceChildren(...rows.map(sensor));
  plan(at("line"), rows);
  facts();
  trial();
  quietShow(online(), now());
}

function online() {
  return state.there && state.broker && state.health?.state === "online" && state.health.sensors?.length > 0;
}

function sensors() {
  return fitted(state.health?.sensors, state.score?.beams);
}

function link() {
  const health = state.health;
  const silent = state.heard != null && now() - state.heard > SILENT_S;
  let [kind, said, more] = ["online", "Online", []];
  if (!state.there) [kind, said, more] = ["away", "Studio away", ["The studio computer does not answer. This is how things stood when it last did."]];
  else if (!state.broker) [kind, said, more] = ["away", "Lanes unheard", ["The studio computer cannot hear its lanes: see whether the broker runs."]];
  else if (!health) [kind, said, more] = ["unheard", "Not heard yet", ["This lane has said nothing yet. Is it switched on, and does its name stand in the address right?"]];
  else if (health.state === "lost") [kind, said, more] = ["away", "Out of reach", ["The lane has stopped answering: see to its power and its network. No putt is lost; it is told once the lane is back."]];
  else if (health.state === "offline") [kind, said, more] = ["off", "Switched off", []];
  else if (silent) [kind, said, more] = ["away", "Silent", ["The lane is connected but has said nothing for " + Math.round(now() - state.heard) + " s. It should every 5."]];
  if (health?.state === "online" && kind === "online") more = [...health.faults];
  at("state").dataset.state = more.length && kind === "online" ? "look" : kind;
  set("state", more.length && kind === "online" ? "Online, needs a look" : said);
  const shown = more.map(words => words.charAt(0).toUpperCase() + words.slice(1));
  if (at("faults").dataset.said !== shown.join("\n")) { // unchanged words are not read out again
    at("faults").dataset.said = shown.join("\n");
    at("faults").replaceChildren(...shown.map(words => html("li", {}, words)));
  }
  at("look").hidden = more.length === 0;
}

function sensor(row) {
  const since = row.last_edge_s_ago == null ? null : row.last_edge_s_ago + (now() - state.heard);
  return html("tr", { role: "row" },
    html("th", { scope: "row", role: "rowheader" }, html("span", { class: "named" }, html("span", { class: "badge", "aria-hidden": "true" }, String(row.number)),
      html("span", {}, row.kind === "beam" ? row.name : called(row), html("small", {}, place(row.position_mm))))),
    html("td", { role: "cell", class: "state-now" }, html("span", { class: "now", "data-bad": BAD.has(row.state) }, sign(row.state), STATES[row.state])),
    html("td", { role: "cell", class: "n ago" }, ago(since)),
    html("td", { role: "cell", class: "n turns" }, String(Math.round(row.edges_per_minute))));
}

function facts() {
  const health = state.health;
  const shown = health?.version == null ? [["Last word", "none yet"]] : [
    ["Last word", ago(state.heard == null ? null : now() - state.heard)],
    ["Clock", health.clock === "synchronised" ? "set from the network" : "not set since it started: times are set right later"],
    ["Still to be stored", health.outbox === 0 ? "nothing" : counted(health.outbox, "event", "events")],
    ["Edges lost", health.edges_dropped === 0 ? "none since the start" : String(health.edges_dropped)],
    ["Software", "Cupbeam " + health.version],
    ["Connection", "no. " + health.connection],
    ["Journal", health.journal],
  ];
  at("facts").replaceChildren(...shown.flatMap(([name, value]) => [html("dt", {}, name), html("dd", { class: name === "Journal" ? "code" : null }, value)]));
}

const WHY = {
  never: "It never cleared: misaligned or unplugged, unless something lies in it. Wipe it, turn its lamp to it, and look at its plug and its supply.",
  blocked: "Something is in it. Take it out.",
  stuck: "Blocked all the time: take away whatever lies in it, wipe it, and see that its lamp points at it and its plug is in.",
  chattering: "It turns on and off by itself: turn its lamp to it, keep sunlight off it, and look at its plug and its supply.",
  unseen: "The ball went past it unseen. Wipe lamp and receiver, turn the lamp until the receiver answers to a hand, and look at both plugs.",
  unreached: "Nothing seen. If the ball stopped before it, roll one faster. If it did not, wipe and turn its lamp, and look at both plugs.",
  flickers: "It turned far more often than the others for the same ball: keep sunlight off it, and turn its lamp until it stands square.",
  order: "It turned before a beam that the ball comes to first. Begin again, with nobody in the line; if it stays so, two plugs are exchanged.",
};
const DO = { beam: "", cup: "Drop a ball into the cup, and take it out.", strike: "Strike a ball.", pedal: "Press the pedal once." };

function trial() {
  const running = state.trial != null;
  at("begin").disabled = !online();
  at("begin").textContent = running ? "Begin again" : "Try the sensors";
  at("end").hidden = !running;
  if (!running) {
    set("do", online() ? "Takes a ball and a minute." : "The lane has to be online for this.");
    set("do-more", playing() ? "A run is being played: balls that you roll now count in it. End it first, or wait until it is over." : "");
    at("checks").replaceChildren();
    return;
  }
  const all = verdicts(state.trial, now());
  const came = outcome(all);
  const beams = all.filter(each => each.kind === "beam");
  const rolling = beams.some(each => each.verdict === "waits");
  set("do", came === "passed" ? "Passed: every beam and the cup answer as they should."
    : came === "failed" && !rolling ? "Not passed: see below, put it right, and roll again."
      : rolling ? "Now roll a ball through all beams, past the hole." : "The beams pass. Now drop a ball into the cup.");
  at("do").dataset.outcome = came;
  set("do-more", "A word from the lane takes up to a second.");
  at("checks").replaceChildren(...all.map(check), ...verdict());
}

const SIGNS = { passed: ["Passed", "M3.5 10.5 8 15 16.5 5"], failed: ["Not passed", "M4 4 16 16M16 4 4 16"], waits: ["Waiting", "M10 5V10.5L13.5 13"] };

function check(each) {
  const [word] = SIGNS[each.verdict];
  const why = each.verdict === "passed" ? "" : WHY[each.why] ?? DO[each.kind];
  return html("li", { "data-verdict": each.verdict }, mark(each.verdict),
    html("p", {}, html("b", {}, called(each)), html("span", { class: "where" }, place(each.position_mm)),
      html("span", { class: "verdict" }, word), html("small", {}, why)));
}

function mark(verdict) {
  const ns = "http://www.w3.org/2000/svg";
  const drawn = document.createElementNS(ns, "svg");
  drawn.setAttribute("viewBox", "0 0 20 20");
  drawn.setAttribute("aria-hidden", "true");
  const path = document.createElementNS(ns, "path");
  path.setAttribute("d", SIGNS[verdict][1]);
  drawn.append(path);
  return drawn;
}

/** The whole chain at once: what the lane made of the ball. */
function verdict() {
  const last = state.trial.attempt;
  if (!last) return [];
  const words = putt(last.attempt, state.score.limit_mm);
  return [html("li", { "data-verdict": "passed" }, mark("passed"),
    html("p", {}, html("b", {}, "What the lane made of it"), html("small", {}, words.key + words.rest + ".")))];
}

function playing() {
  return state.score?.state === "playing";
}

function set(id, text) {
  if (at(id).textContent !== text) at(id).textContent = text;
}

at("begin").addEventListener("click", () => {
  state.trial = begin(state.health.sensors, state.score?.beams ?? [], state.score, now());
  show();
});
at("end").addEventListener("click", () => {
  state.trial = null;
  show();
  at("begin").focus();
});

quietStart(now, show);
const title = lane.replaceAll("-", " ");
document.title = "Health of " + title;
set("name", title.charAt(0).toUpperCase() + title.slice(1));
nav("/health", show);
new ResizeObserver(() => plan(at("line"), sensors())).observe(at("line"));
setInterval(show, 1_000);
show();

watch(`/live/${studio}/${lane}`, {
  there: there => { if (state.there !== there) { state.there = there; show(); } },
  pulse: pulse => { state.broker = pulse.broker; show(); },
  health: health => {
    const again = health.time != null && health.time === state.health?.time; // the stream's first word after a loss
    state.health = health.sensors ? health : { ...state.health, ...health };
    if (!again && health.sensors) {
      state.heard = now();
      quietHeard(health, now());
      if (state.trial) heard(state.trial, health, now());
    }
    show();
  },
  score: score => {
    state.score = score;
    if (state.trial) scored(state.trial, score);
    show();
  },
});
