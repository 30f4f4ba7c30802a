// The card for the wall: where to aim and how fast, from each station, for the green as it is. The address says what was
// asked for, so that it can be kept and sent.

import { get, trying } from "./api.js";
import { plan } from "./card-plan.js";
import { html } from "./draw.js";
import { across, along, ball, laneName, speed } from "./green-words.js";
import { keepers } from "./keep.js";
import { nav } from "./nav.js";
import { length, usesFeet } from "./units.js";

const at = id => document.getElementById(id);
const [FT, IN, M_PER_FT, MOST, FOLLOW_MS] = [304.8, 25.4, 0.3048, 12, 10_000];
const SHEET_PX = 700;
const asked = new URLSearchParams(location.search);
const number = (key, fallback) => asked.has(key) && Number.isFinite(Number(asked.get(key))) ? Number(asked.get(key)) : fallback;
const wish = {
  lane: /^[^/]+\/[^/]+$/.test(asked.get("lane") ?? "") ? asked.get("lane") : null, live: !asked.has("stimp"), stimp: number("stimp", 10), up: number("up", null), side: number("side", null), past: number("past", 300),
  stations: (asked.get("from") ?? "914.4,1828.8,2743.2,3657.6,4572").split(",").map(Number).filter(mm => mm > 0),
};
let lanes = [];
let drills = [];
let card = null;
let mine = 0;

function now() {
  return lanes.find(each => each.studio + "/" + each.lane === wish.lane) ?? null;
}

/** The speed that the card is for: the lane's where it is to be that and the lane has one. */
function stimp() {
  return wish.live ? now()?.now?.ft ?? null : wish.stimp;
}

function up() {
  return wish.up ?? now()?.uphill_percent ?? 0;
}

/** Falling to the left positive. */
function side() {
  return wish.side ?? now()?.side_percent ?? 0;
}

function query() {
  return new URLSearchParams({ stimp_ft: stimp(), uphill_percent: up(), side_percent: side(), past_mm: wish.past,
    stations_mm: wish.stations.join(","), units: usesFeet() ? "feet" : "metric" });
}

async function refresh() {
  const keep = new URLSearchParams({ ...(wish.lane ? { lane: wish.lane } : {}), ...(wish.live ? {} : { stimp: wish.stimp }),
    ...(wish.up == null ? {} : { up: wish.up }), ...(wish.side == null ? {} : { side: wish.side }), past: wish.past, from: wish.stations.join(",") });
  history.replaceState(null, "", "?" + keep);
  if (stimp() == null) {
    say(lanes.length === 0 ? "No lane has been heard yet: type the green's speed." : "This lane has not said yet how fast its green is: type the speed.");
    return;
  }
  const turn = ++mine;
  const got = await trying(() => get("/api/card?" + query()));
  if (turn !== mine) return;
  if (!got) {
    say("There is no card for that.");
    return;
  }
  card = got;
  show();
}

function say(words) {
  at("said").hidden = words === "";
  at("said").textContent = words;
  at("sheet").hidden = words !== "";
}

function show() {
  say("");
  const reading = wish.live ? now()?.now : null;
  at("of").textContent = wish.lane ? laneName(wish.lane.split("/")[1]) : "Break and pace";
  at("for").textContent = [`Green ${speed(card.stimp_ft)}` + (reading ? `, as the lane reads it (${reading.low.toFixed(1)} to ${reading.high.toFixed(1)})` : ""),
    along(card.uphill_percent), across(card.side_percent), `to stop ${length(card.past_mm)} past`].join(" \u00b7 ");
  at("rows").replaceChildren(...card.rows.map(row => html("tr", {}, html("th", { scope: "row" }, length(row.distance_mm)),
    ...[aim(row), length(row.level_roll_mm), ball(row.start_mm_s), ball(row.at_hole_mm_s), `${length(row.effective_width_mm)}, ${Math.round(row.share * 100)}\u00a0%`,
      row.to_hole_s.toFixed(1) + "\u00a0s"].map(words => html("td", {}, words)))));
  plan(at("plan"), card);
  at("plan-said").textContent = card.rows.map(row => row.words).join(" ");
  at("csv").href = "/api/card/export?as=csv&" + query();
  at("made").textContent = `Made on ${new Date(card.day + "T12:00:00Z").toLocaleDateString(undefined, { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" })}. For a green that slopes evenly; the ball rolls from the start.`;
}

function aim(row) {
  const size = Math.abs(row.beside_mm);
  if (size < 8) return "at the middle";
  return `${length(row.beside_mm)} ${row.beside_mm > 0 ? "left" : "right"}` + (size < 54 ? ", inside the hole" : "");
}

/** The form as what is wished for. */
function fill() {
  at("lane").replaceChildren(html("option", { value: "" }, "No lane"), ...lanes.map(each => html("option",
    { value: each.studio + "/" + each.lane, selected: each.studio + "/" + each.lane === wish.lane }, laneName(each.lane))));
  for (const each of document.querySelectorAll("[name=source]")) each.checked = (each.value === "live") === wish.live;
  at("typed").hidden = wish.live;
  at("live").hidden = !wish.live;
  at("live").textContent = now()?.now ? `The lane reads ${speed(now().now.ft)} now.` : "No lane's reading can be had: choose another lane, or type the speed.";
  const metres = at("stimp-unit").value === "m";
  at("stimp").value = round(metres ? wish.stimp * M_PER_FT : wish.stimp, metres ? 2 : 1);
  at("up").value = Math.abs(up());
  at("up-way").value = up() < 0 ? "down" : "up";
  at("side").value = Math.abs(side());
  at("side-way").value = side() < 0 ? "right" : "left";
  at("slopes-from").textContent = `Along the line: ${from(wish.up, now()?.uphill_percent)}. Across it: ${from(wish.side, now()?.side_percent)}.`;
  at("past").value = round(wish.past / (usesFeet() ? IN : 10), 0);
  at("past-unit").textContent = usesFeet() ? "in" : "cm";
  at("from").value = wish.stations.map(mm => round(mm / (usesFeet() ? FT : 1000), 2)).join(", ");
  at("from-unit").textContent = usesFeet() ? "ft" : "m";
}

/** Where a slope comes from. */
function from(typed, said) {
  return typed != null ? "as typed" : said != null ? "as the lane's rig file has it" : wish.lane ? "its rig file says nothing, so level until you type what a level shows" : "level until you type what a level shows";
}

function round(value, decimals) {
  return Number(value.toFixed(decimals));
}

function take(event) {
  const value = Number(String(event.target.value).replace(",", "."));
  const feet = usesFeet();
  switch (event.target.id || event.target.name) {
    case "lane": wish.lane = event.target.value || null; wish.up = null; wish.side = null; break;
    case "source": wish.live = event.target.value === "live"; if (!wish.live && now()?.now) wish.stimp = round(now().now.ft, 1); break;
    case "stimp": wish.stimp = round(at("stimp-unit").value === "m" ? value / M_PER_FT : value, 3); break;
    case "stimp-unit": break;
    case "up": case "up-way": wish.up = Number(at("up").value.replace(",", ".")) * (at("up-way").value === "down" ? -1 : 1); break;
    case "side": case "side-way": wish.side = Number(at("side").value.replace(",", ".")) * (at("side-way").value === "right" ? -1 : 1); break;
    case "past": wish.past = round(value * (feet ? IN : 10), 1); break;
    case "from": wish.stations = listed(at("from").value, feet ? FT : 1000); at("drill").value = ""; break;
    case "drill": fromDrill(); break;
  }
  at("from-said").textContent = wish.stations.length > MOST ? `The first ${MOST} are on the card.` : "";
  wish.stations = wish.stations.slice(0, MOST);
  fill();
  refresh();
}

function fromDrill() {
  const drill = drills[Number(at("drill").value)];
  if (at("drill").value === "" || !drill) return;
  const { at_mm: marked, first_mm: first, step_mm: step, count } = drill.stations;
  wish.stations = [...new Set(marked ?? Array.from({ length: count }, (_, i) => first + i * step))].map(mm => round(mm, 1));
}

/** Distances as people list them: with commas or without, and a comma may also stand in a number. */
function listed(text, unitMm) {
  return text.split(/[;\s]+|,\s+/).flatMap(each => each.split(",").length > 2 || each.includes(".") ? each.split(",") : [each])
    .map(each => round(Number(each.replace(",", ".")) * unitMm, 1)).filter(mm => mm > 0);
}

/** The lanes' own word on their greens: the card follows it. */
async function follow() {
  const had = stimp();
  const got = await get("/api/green").catch(() => null);
  if (!got) return;
  lanes = [...got, ...lanes.filter(each => !got.some(one => one.studio === each.studio && one.lane === each.lane))];
  if (wish.live && stimp() !== had) {
    fill();
    refresh();
  }
}

async function begin() {
  lanes = await trying(() => get("/api/green")) ?? [];
  if (wish.lane && !now()) lanes.push({ studio: wish.lane.split("/")[0], lane: wish.lane.split("/")[1], now: null });
  if (!wish.lane && !asked.has("stimp") && lanes.length > 0) wish.lane = lanes[0].studio + "/" + lanes[0].lane;
  if (lanes.length === 0) wish.live = false;
  const shelf = await trying(() => get("/api/drills"));
  drills = shelf ? [...shelf.presets, ...shelf.own].map(each => each.drill) : [];
  at("drill").replaceChildren(html("option", { value: "" }, "As listed"), ...drills.map((each, i) => html("option", { value: String(i) }, each.name)));
  fill();
  refresh();
  setInterval(follow, FOLLOW_MS);
}

nav("/green", () => { fill(); refresh(); });
at("form").addEventListener("change", take);
at("form").addEventListener("submit", event => event.preventDefault());
at("print").addEventListener("click", () => print());
at("keep").prepend(...keepers(at("plan"), () => "card" + (wish.lane ? "-" + wish.lane.split("/")[1] : "")));
// On paper the words keep their size, so the drawing is made for a sheet's width.
addEventListener("beforeprint", () => card && plan(at("plan"), card, SHEET_PX));
addEventListener("afterprint", () => card && plan(at("plan"), card));
let wide = 0;
new ResizeObserver(([entry]) => {
  if (card && !at("sheet").hidden && Math.round(entry.contentRect.width) !== wide && !matchMedia("print").matches) {
    wide = Math.round(entry.contentRect.width);
    plan(at("plan"), card);
  }
}).observe(at("plan"));
begin();
