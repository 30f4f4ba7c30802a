// Leads somebody with a phone and a few balls through a test of the green: some rolled one way, some the other.

import { Refused, get, send, tell } from "./api.js";
import { html } from "./draw.js";
import { ball, laneName, testSaid } from "./green-words.js";
import { watch } from "./live.js";
import { nav } from "./nav.js";
import { order } from "./orders.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const [, , studio, lane] = location.pathname.split("/");
const path = `/api/green/${studio}/${lane}/test`;
const EACH_WAY = 3;
const EVERY_MS = 5_000;
const without = new Set();
let now = null;
let turn = 0;
let waiting = 0;

async function look() {
  clearTimeout(waiting);
  const mine = ++turn;
  try {
    const got = await get(path + (without.size ? "?without=" + [...without].join(",") : ""));
    if (mine !== turn) return;
    if (!got.on) without.clear();
    now = got;
    show();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    put("do", error.message);
  }
  waiting = setTimeout(look, EVERY_MS);
}

/** Says it, once: what is said again is not read out again. */
function put(id, words) {
  if (at(id).textContent !== words) at(id).textContent = words;
}

function show() {
  const [first, more] = lead();
  put("do", first);
  put("do-more", more);
  at("begin").hidden = now.on;
  at("begin").disabled = !now.online;
  at("end").hidden = at("again").hidden = !now.on;
  at("keep").hidden = !now.speed;
  at("ways").hidden = !now.on;
  put("toward", rolled("toward"));
  put("backward", rolled("back"));
  at("result").hidden = !now.speed;
  if (now.speed) {
    put("speed", `${now.speed.ft.toFixed(2)}\u00a0ft \u00b1 ${((now.speed.high - now.speed.low) / 2).toFixed(2)}`);
    put("words", now.speed.words + ` Slope by the rolls: ${signed(now.speed.uphill_percent)} % (${signed(now.speed.uphill_low)} to ${signed(now.speed.uphill_high)}), uphill positive.`);
    put("more-said", now.more_words);
  }
  at("seen").hidden = now.rolls.length === 0;
  balls();
  put("last", now.last ? testSaid(now.last) : "");
}

/** How many balls of a way count, and how many are needed. */
function rolled(way) {
  const count = now.rolls.filter(each => each.way === way && each.counts).length;
  return count > EACH_WAY ? counted(count, "ball", "balls") : `${count} of ${EACH_WAY}`;
}

function lead() {
  if (!now.online) return ["The lane has to be online for this.", ""];
  if (!now.on) return ["Roll balls through the beams both ways, and the lane measures how fast the green is.", `You need ${EACH_WAY} balls or more, and nobody putting: while the test goes on, putts here are not counted. It ends by itself after ten minutes without a roll.`];
  const how = "By hand, along the line but a hand's width beside the hole, so that it rolls well past the last beam. One ball at a time.";
  const last = now.rolls.at(-1);
  const seen = last ? `Ball ${last.number} was seen. ` : "";
  if (now.missing_toward > 0) return [`${seen}Roll ${one(now.missing_toward)} toward the hole.`, how];
  if (now.missing_back > 0) return [`${seen}Now the other way: roll ${one(now.missing_back)} back, from behind the last beam.`, how];
  if (!now.speed) return [`${seen}A ball seems to have gained speed on its way: leave it out, and roll another.`, how];
  return [now.more === 0 ? "Done: the green's speed is known well enough." : now.more == null ? "Done, as well as these beams can." : `Measured. ${counted(now.more, "more ball", "more balls")} each way would make it surer.`, ""];
}

function one(missing) {
  return missing === 1 ? "one more ball" : `${missing} balls, one after the other,`;
}

function signed(value) {
  return (value < 0 ? "\u2212" : "") + Math.abs(value).toFixed(1);
}

function balls() {
  const rows = now.rolls.toReversed();
  const focused = document.activeElement?.dataset?.ball;
  at("balls").replaceChildren(...rows.map(each => {
    const button = html("button", { type: "button", "data-ball": String(each.number), "aria-pressed": String(!each.counts) }, "Leave out");
    button.addEventListener("click", () => {
      if (!without.delete(each.number)) without.add(each.number);
      look();
    });
    return html("li", { "data-out": !each.counts }, html("p", {}, html("b", {}, `Ball ${each.number}, ${each.way === "toward" ? "toward the hole" : "back"}`),
      html("span", { class: "quiet" }, each.counts ? `${each.ft == null ? "gained speed" : each.ft.toFixed(1) + "\u00a0ft"}, from ${ball(each.start_mm_s)}` : "left out")), button);
  }));
  if (focused) document.querySelector(`[data-ball="${CSS.escape(focused)}"]`)?.focus();
}

async function ask(on, words) {
  without.clear();
  if (await order(`${studio}/${lane}`, { command: "test-rolls", on }, { words })) look();
}

at("begin").addEventListener("click", () => ask(true, "The test has begun. Putts are not counted here now."));
at("again").addEventListener("click", () => ask(true, "Begun afresh."));
at("end").addEventListener("click", () => ask(false, "The test has ended. Putts count again."));
at("keep").addEventListener("click", async () => {
  try {
    await send("POST", path + "/keep", { without: [...without] });
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    tell(error.message, "refused");
    return;
  }
  await ask(false, "Kept. The test has ended, and putts count again.");
});
at("back").href = `/green/${studio}/${lane}`;
at("name").textContent = `Test the green of ${laneName(lane)}`;
document.title = at("name").textContent;
nav("/green", () => now && show());
look();
let saw = "";
watch(`/live/${studio}/${lane}`, { there: () => {}, pulse: () => {}, score: () => {}, health: health => {
  const key = `${health.state} ${health.rolls ? health.rolls.rolls.map(each => each.number).join() : "none"}`;
  if (key !== saw) look();
  saw = key;
} });
