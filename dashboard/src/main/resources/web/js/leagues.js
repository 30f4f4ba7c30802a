// All leagues, and a new one.

import { get, send, trying } from "./api.js";
import { html } from "./draw.js";
import { brief } from "./drill-words.js";
import { dates, day, state, studios } from "./league-words.js";
import { nav } from "./nav.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const DAY_MS = 86_400_000;
let known = null;
let choices = null;

async function load() {
  const got = await trying(() => get("/api/leagues"));
  if (!got) return;
  known = got;
  show();
}

function show() {
  at("said").textContent = known.leagues.length === 0 ? "None yet." : counted(known.leagues.length, "league", "leagues") + ".";
  at("leagues").replaceChildren(...known.leagues.map(league => html("li", {}, html("a", { href: "/league/" + league.id },
    html("span", { class: "entry" }, html("b", {}, league.name), html("span", { class: "quiet" }, `${league.drill.name}, ${dates(league)}, ${studios(league)}`)),
    html("span", { class: "state" }, state(league))))));
  if (known.leagues.length === 0) at("open").open = true;
}

/** What can be chosen is asked for when somebody wants to choose. */
async function offer() {
  if (choices) return;
  choices = await trying(() => get("/api/leagues/choices"));
  if (!choices) return;
  at("drill").replaceChildren(...choices.drills.map(({ drill }, i) => html("option", { value: i }, drill.name)));
  at("first").value = choices.today;
  at("last").value = new Date(Date.parse(choices.today) + 21 * DAY_MS).toISOString().slice(0, 10);
  const box = (value, words, all) => html("label", {}, html("input", { type: "checkbox", value, checked: all, "data-all": all }), html("span", {}, words));
  at("studios").lastElementChild.replaceChildren(box("", "All, later ones too", true), ...choices.studios.map(each => box(each, each, false)));
  said();
}

/** One is chosen, so that it is not all of them; none is, so that it is. */
function choose(event) {
  const boxes = [...at("studios").querySelectorAll("input")];
  const all = boxes.find(each => each.dataset.all !== undefined);
  if (event.target === all && all.checked) boxes.forEach(each => { each.checked = each === all; });
  else all.checked = boxes.every(each => each === all || !each.checked);
}

const monday = date => date.getTime() - ((date.getUTCDay() + 6) % 7) * DAY_MS;

function said() {
  const drill = choices.drills[at("drill").value]?.drill;
  at("drill-said").textContent = drill ? brief(drill) + (drill.overshoot?.limit_mm == null ? ". It leaves to each lane how far past a miss may run; a drill with a limit of its own is fairer." : "") : "";
  const [first, last] = ["first", "last"].map(id => at(id).valueAsDate).map(date => date && monday(date));
  const iso = ms => new Date(ms).toISOString().slice(0, 10);
  at("weeks-said").textContent = first == null || last == null || last < first ? ""
    : `${counted((last - first) / DAY_MS / 7 + 1, "week", "weeks")}: Monday ${day(iso(first))} to Sunday ${day(iso(last + 6 * DAY_MS))}, by the clock of ${choices.zone}.`;
}

async function open(event) {
  event.preventDefault();
  at("wrong").textContent = "";
  const studios = [...at("studios").querySelectorAll("input:checked")].map(each => each.value).filter(Boolean);
  try {
    const made = await send("POST", "/api/leagues", { name: at("name").value.trim(), drill: choices.drills[at("drill").value].drill, breaks: at("breaks").value || null,
      slope: at("slope").value || null, first: at("first").value, last: at("last").value, runs: Number(at("runs").value), studios });
    location.assign("/league/" + made.id);
  } catch (error) {
    if (error.status !== 400) throw error;
    at("wrong").textContent = error.message;
  }
}

at("open").addEventListener("toggle", () => at("open").open && offer());
at("studios").addEventListener("change", choose);
at("new").addEventListener("change", () => choices && said());
at("new").addEventListener("submit", event => trying(() => open(event)));
nav("/leagues", () => { if (known) show(); if (choices) said(); });
load();
