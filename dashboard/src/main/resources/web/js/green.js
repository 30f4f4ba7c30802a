// A lane's green: today's reading, across the day and over days, and how fast it is to be.

import { Refused, get, send, tell, trying } from "./api.js";
import { dayPlot, daysPlot } from "./green-plot.js";
import { along, laneName, speed, testSaid } from "./green-words.js";
import { keepers } from "./keep.js";
import { dayKey } from "./logbook.js";
import { nav } from "./nav.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const [, , studio, lane] = location.pathname.split("/");
const path = `/api/green/${studio}/${lane}`;
const EVERY_MS = 30_000;
const DAYS = 60;
let now = null;
let turn = 0;

async function load(day) {
  const mine = ++turn;
  try {
    const got = await get(path + (day ? "?day=" + encodeURIComponent(day) : ""));
    if (mine !== turn) return;
    now = got;
    show();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    at("said").textContent = error.message;
  }
}

function show() {
  document.title = `Green of ${laneName(lane)}`;
  at("name").textContent = "Green of " + laneName(lane);
  at("day").value = now.day;
  at("day").max = now.today;
  at("after").disabled = now.day >= now.today;
  at("alert").hidden = now.alert == null;
  at("alert").textContent = now.alert ?? "";
  at("said").textContent = said();
  at("card").href = `/card?lane=${studio}/${lane}` + (now.day === now.today || !now.readings.length ? "" : "&stimp=" + now.readings.at(-1).ft);
  at("test").href = `/green/${studio}/${lane}/test`;
  at("tested").hidden = now.test == null;
  if (now.test) at("tested").textContent = testSaid(now.test, now.zone);
  at("across").hidden = now.readings.length === 0;
  at("over").hidden = now.days.length === 0 && !tested();
  const take = `${path}/export?day=${now.day}&as=`;
  at("day-csv").href = take + "csv&sheet=readings";
  at("days-csv").href = take + "csv&sheet=days";
  at("json").href = take + "json";
  if (!at("range").contains(document.activeElement)) {
    at("low").value = now.range?.low_ft ?? "";
    at("high").value = now.range?.high_ft ?? "";
  }
  draw();
}

function said() {
  if (now.said == null) return now.day === now.today ? "Nothing was putted here today." : "Nothing was putted here on this day.";
  const slope = now.uphill_percent == null ? "" : ` By its rig file the line is ${along(now.uphill_percent)}.`;
  return (now.day === now.today ? now.said : now.said.replace("The green runs", "The green ran").replace("has become", "became")) + slope;
}

function draw() {
  if (now.readings.length > 0) {
    dayPlot(at("day-plot"), now, clock);
    const last = now.readings.at(-1);
    const drift = now.drift ? ` From the first hour to the last it ${now.drift.ft >= 0 ? "gained" : "lost"} ${Math.abs(now.drift.ft).toFixed(1)}\u00a0ft (${now.drift.low.toFixed(1)} to ${now.drift.high.toFixed(1)}).`
      : " Three hours of play are needed before a drift can be told.";
    at("day-said").textContent = `${counted(now.readings.length, "reading", "readings")}, the last at ${clock(last.at_ms)}: ${speed(last.ft)}, ${last.low.toFixed(1)} to ${last.high.toFixed(1)}.${drift}`;
  }
  const test = tested();
  if (now.days.length > 0 || test) daysPlot(at("days-plot"), now, test, date);
  const square = test ? ` The square is the last test with rolled balls, on ${date(test.day)}: ${speed(test.ft)}, ${test.low.toFixed(1)} to ${test.high.toFixed(1)}.` : "";
  if (now.days.length === 0) at("days-said").textContent = "No putts were measured in these 60 days." + square;
  if (now.days.length > 0) {
    const ends = now.days.map(each => each.last.ft);
    const out = now.days.filter(each => each.alert).length;
    at("days-said").textContent = `Each day's last reading of the ${counted(now.days.length, "day", "days")} with play in the last 60: between ${Math.min(...ends).toFixed(1)} and ${Math.max(...ends).toFixed(1)}\u00a0ft.`
      + (now.range ? out === 0 ? " None was surely out of range." : ` ${counted(out, "day was", "days were")} surely out of range, shown as triangles.` : "") + square;
  }
}

/** The last test by rolled balls, where it lies within the days that are drawn. */
function tested() {
  if (!now.test) return null;
  const day = dayKey(now.test.at_ms, now.zone);
  const before = (Date.parse(now.day) - Date.parse(day)) / 86_400_000;
  return before >= 0 && before < DAYS ? { day, ft: now.test.stimp_ft, low: now.test.low_ft, high: now.test.high_ft } : null;
}

function clock(ms) {
  return new Date(ms).toLocaleTimeString(undefined, { hour: "2-digit", minute: "2-digit", timeZone: now.zone });
}

function date(day) {
  return new Date(day + "T12:00:00Z").toLocaleDateString(undefined, { day: "numeric", month: "short", timeZone: "UTC" });
}

function go(day) {
  history.replaceState(null, "", "?day=" + day);
  load(day);
}

function step(by) {
  const day = new Date(now.day + "T12:00:00Z");
  day.setUTCDate(day.getUTCDate() + by);
  go(day.toISOString().slice(0, 10));
}

at("before").addEventListener("click", () => now && step(-1));
at("after").addEventListener("click", () => now && step(1));
at("day").addEventListener("change", () => at("day").value && go(at("day").value));
at("range").addEventListener("submit", async event => {
  event.preventDefault();
  const end = id => at(id).value.trim() === "" ? null : Number(at(id).value.replace(",", "."));
  at("range-wrong").textContent = "";
  try {
    await send("PUT", path + "/range", { low_ft: end("low"), high_ft: end("high") });
    tell(end("low") == null ? "Nothing will be said of its speed." : "Set. It is said when the green leaves this range.");
    document.activeElement?.blur();
    load(now?.day);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    at("range-wrong").textContent = error.message;
  }
});
for (const [plot, keep, name] of [["day-plot", "day-keep", "day"], ["days-plot", "days-keep", "days"]]) {
  at(keep).append(...keepers(at(plot), () => `green-${lane}-${now.day}-${name}`));
}
nav("/green", () => now && show());
new ResizeObserver(() => now && draw()).observe(document.querySelector(".halves"));
load(new URLSearchParams(location.search).get("day"));
setInterval(() => now && now.day === now.today && trying(() => load(null)), EVERY_MS);
