// A minute in which nobody touches anything, all the room's lights on: how often each sensor turns nevertheless. A lane tells how
// often each turned within the last minute, so what it says a minute after the beginning is what came since.

import { html } from "./draw.js";
import { called } from "./sensors.js";

const at = id => document.getElementById(id);
const LASTS_S = 60;
const LOST_S = 30;   // a lane speaks every 5 s
const EDGES_MAX = 6; // as `commission` allows: now and then a spike comes from outside
let began = null;
let sensors = null;  // what came of it

/** Takes a health message. */
export function quietHeard(health, now) {
  if (began !== null && health.sensors && now - began >= LASTS_S) {
    sensors = health.sensors;
    began = null;
  }
}

/** What is wrong after the minute, in words. */
function troubles(all) {
  const words = [];
  for (const each of all) {
    const name = called(each);
    if (each.edges_per_minute > EDGES_MAX) {
      words.push(`${name} turned ${Math.round(each.edges_per_minute)} times in a minute in which nobody touched it (up to ${EDGES_MAX} would do): keep sun and lamps off the receiver, turn its lamp square to it, see to its plug, and keep its cable off mains cables.`);
    }
    if (each.state === "blocked" || each.state === "stuck") {
      words.push(`${name} is blocked at the end of the quiet minute, and never cleared: misaligned or unplugged.`);
    }
  }
  return words;
}

/** @param online whether the lane can be counted now */
export function quietShow(online, now) {
  if (began !== null && (!online || now - began > LASTS_S + LOST_S)) began = null;
  const running = began !== null;
  const wrong = running || sensors === null ? [] : troubles(sensors);
  at("quiet-begin").disabled = !online;
  at("quiet-begin").hidden = running;
  at("quiet-begin").textContent = sensors === null ? "Count for a minute" : "Count another minute";
  at("quiet-end").hidden = !running;
  delete at("quiet-do").dataset.outcome;
  if (!online) put("quiet-do", "The lane has to be online for this.");
  else if (running) put("quiet-do", "Nobody touches anything now.");
  else if (sensors === null) put("quiet-do", "All the room's lights on, sunlight as on a bright day.");
  else {
    put("quiet-do", wrong.length ? "Not quiet: see below, put it right, and count again." : `Quiet: no sensor turned more than ${EDGES_MAX} times.`);
    at("quiet-do").dataset.outcome = wrong.length ? "failed" : "passed";
  }
  put("quiet-more", running ? `${Math.max(0, Math.ceil(LASTS_S - (now - began)))} s left, and a few until the lane has told.` : "Then nobody touches anything for a minute. What turns by itself is counted.");
  const list = at("quiet-told");
  if (list.dataset.said !== wrong.join("\n")) {
    list.dataset.said = wrong.join("\n");
    list.replaceChildren(...wrong.map(words => html("li", {}, words)));
  }
}

function put(id, words) { // what is said again is not read out again
  if (at(id).textContent !== words) at(id).textContent = words;
}

/** @param now gives the time, s @param show is called after a press */
export function quietStart(now, show) {
  at("quiet-begin").addEventListener("click", () => {
    began = now();
    sensors = null;
    show();
    at("quiet-end").focus();
  });
  at("quiet-end").addEventListener("click", () => {
    began = null;
    show();
    at("quiet-begin").focus();
  });
}
