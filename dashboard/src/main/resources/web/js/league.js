// One league: its table over all weeks, and one week's.

import { Refused, get, send, tell, trying } from "./api.js";
import { html } from "./draw.js";
import { dates, day, heard, miss, rules, state } from "./league-words.js";
import { query } from "./logbook.js";
import { nav } from "./nav.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const ID = location.pathname.split("/")[2];
const EVERY_MS = 60_000;
let now = null;
let asked = 0;

async function load(quietly) {
  const mine = ++asked;
  const week = new URLSearchParams(location.search).get("week");
  try {
    const got = await get("/api/league/" + encodeURIComponent(ID) + query({ week }));
    if (mine !== asked) return;
    now = got;
    show();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    if (!quietly) at("said").textContent = error.message;
  }
}

function show() {
  const { league, week } = now;
  document.title = league.name;
  at("name").textContent = league.name;
  at("said").textContent = `${state(league)}. ${dates(league)}.`;
  at("rules").textContent = rules(league);
  const begun = league.weeks.slice(0, league.now);
  at("all-said").textContent = now.rows.length === 0 ? (league.now === 0 ? "It has not begun." : "Nobody has played in it yet.") : several(now.players, now.rows);
  at("all-head").replaceChildren(head(begun.map(each => html("th", { scope: "col", class: "n of-week" }, html("abbr", { title: `Stations cleared in the week of ${day(each.from)}` }, each.name.slice(5))))));
  at("all").replaceChildren(...now.rows.map(row => tr(row, row.weeks.map(each => html("td", { class: "n of-week" }, each == null ? "\u2013" : String(each))), row.studios.join(", "))));
  at("week").replaceChildren(...league.weeks.map(each => html("option", { value: each.name, disabled: each.number > league.now },
    `${each.name.slice(5)}: ${day(each.from, { day: "numeric", month: "short" })} to ${day(each.to, { day: "numeric", month: "short" })}`)));
  if (week) at("week").value = league.weeks[week.number - 1].name;
  showWeek(league, week);
  take(league);
  if (document.activeElement?.form !== at("change")) {
    at("new-name").value = league.name;
    at("last").value = league.weeks.at(-1).to;
  }
}

function several(players, rows) {
  return counted(players, "player", "players") + (rows.length < players ? `, of whom ${rows.length} are shown; the rest is in the file below.` : ".");
}

function showWeek(league, week) {
  at("week-of").textContent = week ? (week.number === league.now ? "This week" : `Week ${week.number}`) : "Week";
  at("week-said").textContent = !week ? "No week has begun." : week.rows.length === 0 ? "Nobody has played in it." : several(week.players, week.rows);
  const [all, words] = week?.heard ? heard(week, league) : [true, ""];
  at("heard").hidden = words === "";
  at("heard").classList.toggle("late", !all);
  at("heard").classList.toggle("hint", all);
  at("heard").textContent = words;
  at("week-head").replaceChildren(head([]));
  at("week-rows").replaceChildren(...(week?.rows ?? []).map(row => tr(row, [], runs(row, league))));
}

/** Where the runs that count were played, each a way to it. */
function runs(row, league) {
  const links = row.played.flatMap((run, i) => [i ? ", " : "", html("a", { href: "/run/" + run.id }, `${run.studio} ${run.lane.replaceAll("-", " ")}, `
    + new Date(run.at_ms).toLocaleString(undefined, { weekday: "short", hour: "numeric", minute: "2-digit", timeZone: league.zone }))]);
  const more = row.played.length ? row.played[0].of_so_many - row.played.length : 0;
  return more > 0 ? [...links, `, best of ${row.played[0].of_so_many}`] : links;
}

function head(weeks) {
  const n = (long, short) => html("th", { scope: "col", class: "n" }, html("abbr", { title: long }, short));
  return html("tr", {}, html("th", { scope: "col" }, html("span", { class: "unseen" }, "Place")), html("th", { scope: "col" }, "Player"), ...weeks,
    n("Stations cleared", "Stations"), n("Putts", "Putts"), n("Mean distance of the misses", "Miss"));
}

function tr(row, weeks, under) {
  const place = row.shared ? html("abbr", { title: `place ${row.place}, shared` }, row.place + "=") : String(row.place);
  return html("tr", {}, html("td", { class: row.place === 1 ? "place first" : "place" }, place),
    html("th", { scope: "row" }, html("a", { href: "/player/" + row.player }, row.name), html("small", {}, ...[under].flat())), ...weeks,
    html("td", { class: "n" }, String(row.figures.cleared)), html("td", { class: "n" }, String(row.figures.attempts)), html("td", { class: "n" }, miss(row.figures)));
}

function take(league) {
  const link = (name, choice) => html("a", { class: "button", "data-right": "export", download: true, href: `/api/league/${league.id}/export` + query(choice) }, name);
  at("take").replaceChildren(link("Table as CSV", { as: "csv", sheet: "table" }), link("Weeks as CSV", { as: "csv", sheet: "weeks" }),
    link("Runs as CSV", { as: "csv", sheet: "runs" }), link("All as JSON", { as: "json" }));
}

async function change(event) {
  event.preventDefault();
  at("wrong").textContent = "";
  try {
    await send("PUT", "/api/league/" + now.league.id, { version: now.league.version, name: at("new-name").value.trim(), last: at("last").value });
    tell("Kept.");
    await load();
  } catch (error) {
    if (error.status !== 400) throw error;
    at("wrong").textContent = error.message;
  }
}

async function takeOff() {
  const id = now.league.id;
  await send("DELETE", "/api/league/" + id);
  tell(`${now.league.name} is off the list.`, "done", { name: "Put it back", run: () => trying(async () => { await send("POST", `/api/league/${id}/put-back`); await load(); }) });
}

at("week").addEventListener("change", () => {
  history.replaceState(null, "", location.pathname + query({ week: at("week").value }));
  load();
});
at("change").addEventListener("submit", event => trying(() => change(event)));
at("off").addEventListener("click", () => trying(takeOff));
nav("/leagues", () => now && show());
load();
setInterval(() => load(true), EVERY_MS);
