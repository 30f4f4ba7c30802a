// How fast the greens run now, those that are not as wanted first.

import { Refused, get } from "./api.js";
import { html } from "./draw.js";
import { along, laneName, speed } from "./green-words.js";
import { nav } from "./nav.js";
import { counted } from "./words.js";

const EVERY_MS = 10_000;
const at = id => document.getElementById(id);
let known = null;

async function look() {
  try {
    known = await get("/api/green");
    show();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    at("said").textContent = error.message;
  }
}

function show() {
  const out = known.filter(each => each.alert).length;
  const words = known.length === 0 ? "No lane has been heard yet. One appears here as soon as it is."
    : counted(known.length, "lane", "lanes") + (out === 0 ? "." : out === 1 ? ", one is not as fast as it is to be." : `, ${out} are not as fast as they are to be.`);
  if (at("said").textContent !== words) at("said").textContent = words;
  const focused = document.activeElement?.closest?.("#lanes a")?.getAttribute("href");
  at("lanes").replaceChildren(...known.toSorted((a, b) => Boolean(b.alert) - Boolean(a.alert)).map(card));
  if (focused) document.querySelector(`#lanes a[href="${CSS.escape(focused)}"]`)?.focus();
}

function card(each) {
  const now = each.now;
  return html("li", {}, html("a", { class: "card lane", href: `/green/${each.studio}/${each.lane}` },
    html("b", {}, laneName(each.lane)),
    html("span", { class: "now" }, now ? speed(now.ft) : "No reading yet"),
    html("span", { class: "quiet" }, [now ? `${now.low.toFixed(1)} to ${now.high.toFixed(1)}\u00a0ft` : "", each.uphill_percent == null ? "" : along(each.uphill_percent),
      each.range ? `wanted ${each.range.low_ft.toFixed(1)} to ${each.range.high_ft.toFixed(1)}\u00a0ft` : ""].filter(Boolean).join(" \u00b7 ")),
    each.alert ? html("span", { class: "alert" }, each.alert) : ""));
}

nav("/green", () => known && show());
look();
setInterval(look, EVERY_MS);
