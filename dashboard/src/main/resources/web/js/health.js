// All lanes at a glance, those that need somebody first.

import { Refused, get } from "./api.js";
import { html, svg } from "./draw.js";
import { watch } from "./live.js";
import { nav } from "./nav.js";
import { BAD, STATES, ago, called, fitted, plan, sign } from "./sensors.js";
import { counted } from "./words.js";

const EVERY_MS = 4_000;
const SILENT_S = 16;
const RANK = { away: 0, look: 1, unheard: 2, off: 3, online: 4 };
const SAID = { away: "Out of reach", silent: "Silent", look: "Needs a look", unheard: "Not heard yet", off: "Switched off", online: "Online" };
let waiting = 0;

async function look() {
  clearTimeout(waiting);
  try {
    show(await get("/api/health"));
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    document.getElementById("said").textContent = "The studio computer does not answer. This is how things stood when it last did.";
  }
  waiting = setTimeout(look, EVERY_MS);
}

function show(lanes) {
  const all = lanes.map(each => ({ ...each, kind: kind(each), fitted: fitted(each.health?.sensors, each.beams) }))
    .sort((a, b) => RANK[a.kind] - RANK[b.kind] || a.studio.localeCompare(b.studio) || a.lane.localeCompare(b.lane));
  const bad = all.filter(each => each.kind === "away" || each.kind === "look").length;
  const said = document.getElementById("said");
  const words = all.length === 0 ? "No lane has been heard yet. One appears here as soon as it is."
    : bad === 0 ? `${counted(all.length, "lane", "lanes")}, nothing to see to.`
      : `${counted(all.length, "lane", "lanes")}, ${bad === 1 ? "one needs" : bad + " need"} somebody.`;
  if (said.textContent !== words) said.textContent = words;
  const trouble = document.getElementById("trouble");
  const store = all.find(each => each.store)?.store;
  const why = store ? `Nothing is kept at present; the lanes hold what they have. The ${store}.` : "";
  if (trouble.textContent !== why) trouble.textContent = why;
  const focused = document.activeElement?.closest?.("#lanes a")?.getAttribute("href");
  document.getElementById("lanes").replaceChildren(...all.map(card));
  for (const drawn of document.querySelectorAll("#lanes .strip")) plan(drawn, all[drawn.dataset.of].fitted);
  if (focused) document.querySelector(`#lanes a[href="${CSS.escape(focused)}"]`)?.focus();
}

function kind(each) {
  const health = each.health;
  if (!health) return "unheard";
  if (health.state === "lost") return "away";
  if (health.state === "offline") return "off";
  return each.heard_ago_s > SILENT_S ? "away" : health.faults.length || each.green ? "look" : "online";
}

function card(each, i) {
  const health = each.health;
  const silent = each.kind === "away" && health.state === "online";
  const faults = each.kind === "look" ? [...health.faults, ...(each.green ? [each.green] : [])] : [];
  return html("li", {}, html("a", { class: "card lane", href: `/health/${each.studio}/${each.lane}` },
    html("span", { class: "spread" }, html("b", {}, each.lane.replaceAll("-", " ")),
      html("span", { class: "state", "data-state": each.kind }, silent ? SAID.silent : SAID[each.kind])),
    each.fitted.some(sensor => sensor.position_mm != null) ? svg("svg", { class: "strip", "aria-hidden": "true", "data-of": i }) : "",
    each.fitted.length ? html("span", { class: "signs" }, ...each.fitted.map(sensor => html("span", { "data-bad": BAD.has(sensor.state) }, sign(sensor.state),
      html("span", { class: "unseen" }, " ", called(sensor)), html("span", { class: "unseen state-said" }, ` ${STATES[sensor.state]}, `)))) : "",
    ...faults.map(words => html("span", { class: "fault" }, words.charAt(0).toUpperCase() + words.slice(1))),
    html("span", { class: "quiet" }, health?.version ? facts(each, health) : "")));
}

function facts(each, health) {
  const waits = health.outbox === 0 ? "all stored" : counted(health.outbox, "event", "events") + " to be stored";
  const clock = health.clock === "synchronised" ? "clock set" : "clock not set";
  return [ago(each.heard_ago_s), clock, waits, health.version].join(" \u00b7 ");
}

nav("/health");
look();
watch("/live/lanes", { there: () => {}, pulse: () => {}, lanes: (() => {
  let known = "";
  return lanes => {
    const now = JSON.stringify(lanes);
    if (now !== known) look(); // a lane came, went, or was lost: at once
    known = now;
  };
})() });
