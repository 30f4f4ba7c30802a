// Where a lane's beams stand, by balls rolled through them, one beam being measured by rule; how they stand to hole and limit.

import { Refused, get } from "./api.js";
import { html } from "./draw.js";
import { order } from "./orders.js";
import { offer } from "./rig-file.js";
import { length } from "./units.js";

const at = id => document.getElementById(id);
const [, , studio, lane] = location.pathname.split("/");
const path = `/api/health/${studio}/${lane}/places`;
const OFTEN_MS = 3_000;
const SELDOM_MS = 20_000;
const gauge = { beam: "", at: "", within: "" };
let waiting = 0;
let turn = 0;

function asked() {
  return "?" + new URLSearchParams({ beam: gauge.beam, at_mm: gauge.at, within_mm: gauge.within });
}

async function look() {
  clearTimeout(waiting);
  const mine = ++turn;
  let on = false;
  try {
    const said = await get(path + asked());
    if (mine !== turn) return;
    on = said.on;
    show(said);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    put("places-do", error.message);
  }
  waiting = setTimeout(look, on ? OFTEN_MS : SELDOM_MS);
}

function put(id, words) { // what is said again is not read out again
  if (at(id).textContent !== words) at(id).textContent = words;
}

function show(said) {
  put("places-do", lead(said));
  put("places-more", said.on ? "By hand, a hand's width beside the hole, one ball at a time, slow ones and fast ones. Putts are not counted meanwhile."
    : "The ball's own width gives the scale; one beam has to be measured from the hole's centre. A beam that stands a centimetre or more from where the rig file says is not recognised here: for that, run cupbeam commission on the lane's computer.");
  at("roll").disabled = !said.online;
  at("roll").hidden = said.on;
  at("rolled").hidden = !said.on;
  at("places-told").hidden = said.beams.length === 0;
  at("standing").replaceChildren(...said.beams.map(each => html("tr", {}, html("th", { scope: "row" }, each.name),
    html("td", { class: "n" }, each.rig_mm.toFixed(1)), html("td", { class: "n" }, each.mm == null ? "" : each.mm.toFixed(1)),
    html("td", { class: "n" }, each.within_mm == null ? "" : each.within_mm.toFixed(1)))));
  if (said.beams.length && at("gauge-beam").options.length !== said.beams.length) {
    at("gauge-beam").replaceChildren(...said.beams.map((each, index) => html("option", { value: String(index) }, each.name)));
    at("gauge-beam").value = String(said.measured);
    at("gauge-at").value = String(said.at_mm);
    at("gauge-within").value = String(said.within_mm);
  }
  put("places-green", said.stimp_ft == null ? "" : `The green runs ${said.stimp_ft.value.toFixed(2)}\u00a0ft ± ${said.stimp_ft.within.toFixed(2)}; the line's slope is ${said.uphill_percent.value.toFixed(2)} % ± ${said.uphill_percent.within.toFixed(2)}, uphill positive.`);
  limit(said);
  offer(said.text, path + "/file" + asked());
}

function limit(said) {
  const advice = said.advice ?? [];
  put("limit-do", said.advice == null ? "The lane has to be online for this." : advice.length ? "To be considered:" : "Nothing stands in the way of playing.");
  put("limit-more", said.advice == null ? "" : `A miss may finish ${length(said.limit_mm)} past the hole's centre: measure it. That the hole's sensor sees a ball drop is tried in step 1.`);
  const list = at("limit-told");
  if (list.dataset.said !== advice.join("\n")) {
    list.dataset.said = advice.join("\n");
    list.replaceChildren(...advice.map(words => html("li", {}, words.charAt(0).toUpperCase() + words.slice(1) + ".")));
  }
}

function lead(said) {
  if (!said.online) return "The lane has to be online for this.";
  if (!said.on) return `Roll ${said.each_way} balls or more each way through all beams, and see where the beams stand.`;
  if (said.toward < said.each_way) return `${said.toward} of ${said.each_way} balls toward the hole, ${said.back} of ${said.each_way} back. Roll toward the hole.`;
  if (said.back < said.each_way) return `${said.toward} balls toward the hole, ${said.back} of ${said.each_way} back. Now roll back, from behind the last beam.`;
  return `${said.toward} balls toward the hole, ${said.back} back: the beams' places are known as below.`;
}

async function roll(on, words) {
  if (await order(`${studio}/${lane}`, { command: "test-rolls", on }, { words })) look();
}

at("roll").addEventListener("click", () => roll(true, "Roll balls now. Putts are not counted meanwhile."));
at("rolled").addEventListener("click", () => roll(false, "Putts count again."));
at("gauge").addEventListener("submit", event => {
  event.preventDefault();
  Object.assign(gauge, { beam: at("gauge-beam").value, at: at("gauge-at").value.trim().replace("\u2212", "-"), within: at("gauge-within").value.trim() });
  look();
});
look();
