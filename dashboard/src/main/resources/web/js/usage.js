// A month of the studio's use on one page.

import { Refused, get, send, tell, trying } from "./api.js";
import { html, svg } from "./draw.js";
import { dayName, heat, hourSaid } from "./heat.js";
import { nav } from "./nav.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const HOUR_MS = 3_600_000;
const SHEETS = [["summary", "Summary"], ["lanes", "By lane"], ["days", "By day"], ["hours_of_the_week", "By hour of the week"], ["faults", "Faults"]];
let now = null;
let asked = 0;

async function load(month) {
  const mine = ++asked;
  try {
    const got = await get("/api/usage" + (month ? "?month=" + encodeURIComponent(month) : ""));
    if (mine !== asked) return;
    now = got;
    show();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    at("said").textContent = error.message;
  }
}

function show() {
  const name = new Date(now.month + "-15T12:00:00Z").toLocaleDateString(undefined, { month: "long", year: "numeric" });
  document.title = "Usage " + name;
  at("month-said").textContent = name;
  at("month").value = now.month;
  at("month").max = now.now;
  at("after").disabled = now.month >= now.now;
  at("said").textContent = summary();
  figures();
  const tops = heat(at("heat-head"), at("heat-body"), now.heat);
  at("heat-said").textContent = extremes();
  at("scale").replaceChildren("% of the open time in play:", ...[0, ...tops].map((top, i) => html("span", { "data-step": i }, i === 0 ? "0" : "\u2264\u00a0" + top)));
  at("lanes").replaceChildren(...now.lanes.map(lane));
  days();
  faults();
  exports();
  if (document.activeElement?.form !== at("hours")) {
    at("open").value = now.hours;
    at("zone").value = now.zone;
  }
}

function summary() {
  if (now.all.putts === 0) return now.month === now.now ? "Nothing was played yet this month." : "Nothing was played in this month.";
  const so = now.month === now.now ? " so far" : "";
  const share = now.all.share == null ? "" : `, ${percent(now.all.share)} of the time that it was open`;
  return `Played in for ${hours(now.all.play_ms + now.all.closed_ms)}${so}${share}.`;
}

function figures() {
  const all = now.all;
  const visitors = now.visitors;
  const shown = [
    ["In play", hours(all.play_ms), `of ${hours(all.open_ms)} open` + (all.closed_ms > 0 ? `, and ${hours(all.closed_ms)} while closed` : "")],
    ["Putts", number(all.putts), `${number(all.holed)} holed`],
    ["Runs", number(visitors.runs), counted(number(visitors.duels), "duel", "duels") + " among them"],
    ["Players", number(visitors.players), `${number(visitors.returning)} came back, ${number(now.newcomers)} new`],
    ["Balls fetched", number(now.balls_fetched), `the cup emptied ${number(visitors.emptied)} times`],
    ["Rig faults", number(now.faults.length), now.fault_ms > 0 ? `${lasted(now.fault_ms)} in all` : "nothing was wrong"],
  ];
  at("figs").replaceChildren(...shown.map(([name, value, more]) =>
    html("div", {}, html("dt", {}, name), html("dd", {}, html("b", {}, value), html("span", {}, more)))));
}

function extremes() {
  const said = cell => `${dayName(cell.day)} ${hourSaid(cell.hour)} (${percent(cell.figures.share)})`;
  if (now.all.putts === 0 || now.busiest.length === 0) return "";
  return `Busiest: ${now.busiest.map(said).join(", ")}. Idlest: ${now.idlest.map(said).join(", ")}. Hours by the clock of ${now.zone}.`;
}

function lane(each) {
  const several = new Set(now.lanes.map(one => one.studio)).size > 1;
  return html("tr", {}, html("th", { scope: "row" }, (several ? each.studio + " " : "") + each.lane.replaceAll("-", " ")),
    html("td", { class: "n" }, hours(each.figures.play_ms)),
    html("td", { class: "n" }, each.figures.share == null ? "closed" : percent(each.figures.share)),
    html("td", { class: "n" }, number(each.figures.putts)),
    html("td", { class: "n" }, each.figures.putts ? percent(each.figures.holed / each.figures.putts) : "none"));
}

/** A column a day: what was open in outline, what was played in filled. */
function days() {
  const into = at("days");
  const [width, height, foot] = [Math.max(280, into.getBoundingClientRect().width), 130, 20];
  const most = Math.max(HOUR_MS, ...now.days.map(each => Math.max(each.figures.open_ms, each.figures.play_ms + each.figures.closed_ms)));
  const wide = width / now.days.length;
  const y = ms => (height - foot) * (1 - ms / most);
  into.setAttribute("viewBox", `0 0 ${width} ${height}`);
  into.replaceChildren(svg("line", { x1: 0, x2: width, y1: height - foot, y2: height - foot, class: "ground" }));
  now.days.forEach((each, i) => {
    const [x, w] = [i * wide + wide * 0.14, wide * 0.72];
    const played = each.figures.play_ms + each.figures.closed_ms;
    const date = new Date(each.day + "T12:00:00Z");
    if (each.figures.open_ms > 0) into.append(svg("rect", { x, width: w, y: y(each.figures.open_ms), height: height - foot - y(each.figures.open_ms), class: "open" }));
    if (played > 0) into.append(svg("rect", { x, width: w, y: y(played), height: height - foot - y(played), class: "played" }));
    if (date.getUTCDay() === 1 || width > 560) into.append(svg("text", { x: i * wide + wide / 2, y: height - 5, "text-anchor": "middle" }, String(date.getUTCDate())));
  });
  const best = now.days.reduce((a, b) => b.figures.play_ms > a.figures.play_ms ? b : a);
  at("days-said").textContent = best.figures.play_ms === 0 ? "No day was played in."
    : `Filled: hours in play, of all lanes; outlined: open. Most on ${new Date(best.day + "T12:00:00Z").toLocaleDateString(undefined, { weekday: "long", day: "numeric", month: "long", timeZone: "UTC" })}: ${hours(best.figures.play_ms)}.`;
}

function faults() {
  const MOST = 8;
  at("faults-said").textContent = now.faults.length === 0 ? "Nothing." : now.faults.length > MOST ? `The latest ${MOST} of ${now.faults.length}; all are in the export.` : "";
  at("faults").replaceChildren(...now.faults.slice(0, MOST).map(each => html("li", {},
    html("p", {}, html("b", {}, (each.lane ?? "a lane").replaceAll("-", " ")), ": ", each.words),
    html("p", { class: "quiet" }, clock(each.began_ms), each.ended_ms == null ? ", goes on" : `, for ${lasted(each.ended_ms - each.began_ms)}`))));
}

function exports() {
  const path = `/api/usage/export?month=${now.month}&as=`;
  at("json").href = path + "json";
  at("csv").replaceChildren(...SHEETS.map(([sheet, name]) => html("a", { class: "button", href: `${path}csv&sheet=${sheet}`, download: true }, name + " (CSV)")));
}

function clock(ms) {
  return new Date(ms).toLocaleString(undefined, { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit", timeZone: now.zone });
}

function hours(ms) {
  const value = ms / HOUR_MS;
  return (value < 9.95 ? value.toFixed(1) : number(Math.round(value))) + "\u00a0h";
}

function lasted(ms) {
  return ms < HOUR_MS ? Math.max(1, Math.round(ms / 60_000)) + "\u00a0min" : ms < 48 * HOUR_MS ? hours(ms) : Math.round(ms / HOUR_MS / 24) + "\u00a0days";
}

function number(value) {
  return value.toLocaleString();
}

function percent(share) {
  return Math.round(share * 100) + "\u00a0%";
}

function step(by) {
  const date = new Date(now.month + "-15T12:00:00Z");
  date.setUTCMonth(date.getUTCMonth() + by);
  go(date.toISOString().slice(0, 7));
}

function go(month) {
  history.replaceState(null, "", "?month=" + month);
  load(month);
}

at("before").addEventListener("click", () => now && step(-1));
at("after").addEventListener("click", () => now && step(1));
at("month").addEventListener("change", () => /^\d{4}-\d\d$/.test(at("month").value) && go(at("month").value));
at("print").addEventListener("click", () => print());
at("hours").addEventListener("submit", event => {
  event.preventDefault();
  at("hours-wrong").textContent = "";
  trying(async () => {
    try {
      const kept = await send("PUT", "/api/usage/hours", { zone: at("zone").value, hours: at("open").value });
      at("open").value = kept.hours;
      at("zone").value = kept.zone;
      tell("The hours are kept.");
      await load(now?.month);
    } catch (error) {
      if (error.status !== 400) throw error;
      at("hours-wrong").textContent = error.message;
    }
  });
});
at("zones").append(...(Intl.supportedValuesOf?.("timeZone") ?? []).map(zone => html("option", { value: zone })));
nav("/usage");
new ResizeObserver(() => now && days()).observe(at("days"));
load(new URLSearchParams(location.search).get("month"));
