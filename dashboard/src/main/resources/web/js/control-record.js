// The last putts at the lane as they are on record, and striking one from it.

import { get } from "./api.js";
import { html, kindOf, mark } from "./draw.js";
import { order, twice } from "./orders.js";
import { length } from "./units.js";

const at = id => document.getElementById(id);
let asked = null;
let known = [];

/** Asks for them once the host has had time to keep the newest. */
export function refresh(lane, soonMs = 500) {
  clearTimeout(asked);
  asked = setTimeout(async () => {
    try {
      known = (await get(`/api/lanes/${lane}/putts`)).putts;
      show(lane);
    } catch {
      // It is asked for again after the next putt.
    }
  }, soonMs);
}

export function show(lane) {
  at("record").hidden = known.length === 0;
  const open = at("putts").querySelector("details[open]")?.dataset.sequence;
  at("putts").replaceChildren(...known.map(each => row(lane, each, each.sequence === open)));
}

function row(lane, each, open) {
  const kind = kindOf({ outcome: each.holed ? "holed" : "missed", overshoot: each.overshoot });
  const said = (each.player ?? "nobody") + (each.station_mm ? ", " + length(each.station_mm) : "") + ": " + words(each);
  if (!each.counts) {
    return html("li", { class: "struck" }, mark(kind), html("span", {}, html("s", {}, said), html("small", {},
      (each.corrected === "taken-back" ? "taken back" : "struck") + (each.corrected_by ? " by " + each.corrected_by : ""))));
  }
  const strike = html("button", { type: "button" }, html("span", {}, "Strike from the record"));
  twice(strike, () => "Yes, it does not count", () => order(lane, { command: "void", of: each.sequence }, { words: "Struck from the record. The game stays as it is." })
    .then(done => done && refresh(lane, 700)));
  return html("li", {}, html("details", { open, "data-sequence": each.sequence }, html("summary", {}, mark(kind), html("span", {}, said),
    html("time", { datetime: new Date(each.at_ms).toISOString() }, new Date(each.at_ms).toLocaleTimeString([], { hour: "2-digit", minute: "2-digit" }))),
  html("div", { class: "row" }, strike, html("p", { class: "hint" }, "Statistics leave it out. To undo the last putt in the game, take it back instead."))));
}

function words(each) {
  if (each.holed) return "holed";
  const past = each.overshoot ? "past the limit" : "missed";
  return past + (each.finish_mm == null ? "" : ", " + length(each.finish_mm) + (each.finish_mm < 0 ? " short" : " past")) + (each.entered ? ", entered by hand" : "");
}
