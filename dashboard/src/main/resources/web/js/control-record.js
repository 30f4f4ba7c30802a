// The last putts at the lane as they are on record, and striking one from it.

import { get } from "./api.js";
import { html, kindOf, mark } from "./draw.js";
import { settle, without } from "./focus.js";
import { order, twice } from "./orders.js";
import { length, usesFeet } from "./units.js";

const at = id => document.getElementById(id);
let asked = null;
let known = [];
let zone;

/** Asks for them once the host has had time to keep the newest. */
export function refresh(lane, soonMs = 500) {
  clearTimeout(asked);
  asked = setTimeout(async () => {
    try {
      ({ zone, putts: known } = await get(`/api/lanes/${lane}/putts`));
      show(lane);
    } catch {
      // It is asked for again after the next putt.
    }
  }, soonMs);
}

export function show(lane) {
  at("record").hidden = known.length === 0;
  const drawn = new Map([...at("putts").children].map(each => [each.dataset.said, each]));
  const rows = known.map(each => {
    const said = JSON.stringify(each) + usesFeet();
    const made = drawn.get(said) ?? row(lane, each);
    made.dataset.said = said;
    return made;
  });
  without(() => settle(at("putts"), rows), [...rows.map(each => each.querySelector("summary")).filter(Boolean), at("miss-open")]);
}

function row(lane, each) {
  const kind = kindOf({ outcome: each.holed ? "holed" : "missed", overshoot: each.overshoot });
  const said = (each.player ?? "nobody") + (each.station_mm ? ", " + length(each.station_mm) : "") + ": " + words(each);
  if (!each.counts) {
    return html("li", { class: "struck" }, mark(kind), html("span", {}, html("s", {}, said), html("small", {},
      (each.corrected === "taken-back" ? "taken back" : "struck") + (each.corrected_by ? " by " + each.corrected_by : ""))));
  }
  const strike = html("button", { type: "button" }, html("span", {}, "Strike from the record"));
  twice(strike, () => "Yes, it does not count", () => order(lane, { command: "void", of: each.sequence }, { words: "Struck from the record. The game stays as it is." })
    .then(done => done && refresh(lane, 700)));
  return html("li", {}, html("details", {}, html("summary", {}, mark(kind), html("span", {}, said),
    html("time", { datetime: new Date(each.at_ms).toISOString() }, new Date(each.at_ms).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit", timeZone: zone }))),
  html("div", { class: "row", "data-right": "coach" }, strike, html("p", { class: "hint" }, "The record scores the run without it. To undo the last putt in the game, take it back instead."))));
}

function words(each) {
  if (each.holed) return "holed";
  const past = each.overshoot ? "past the limit" : "missed";
  return past + (each.finish_mm == null ? "" : ", " + length(each.finish_mm) + (each.finish_mm < 0 ? " short" : " past")) + (each.entered ? ", entered by hand" : "");
}
