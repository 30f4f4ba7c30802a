// What the logbook's pages share: how a run, a day and a player are said, and lists that go on when asked.

import { html } from "./draw.js";
import { length } from "./units.js";
import { counted, endedBy } from "./words.js";

/** The name, or that there is none any more. */
export function named(player) {
  return player?.name ?? (player ? "a player who was forgotten" : "nobody");
}

/** The year goes without saying while it lasts, by the studio's clock. */
function year(ms, zone) {
  const of = at => new Date(at).toLocaleString("en", { year: "numeric", timeZone: zone });
  return of(ms) === of(Date.now()) ? {} : { year: "numeric" };
}

export function when(ms, zone, options = { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit", ...year(ms, zone) }) {
  return new Date(ms).toLocaleString(undefined, { ...options, timeZone: zone });
}

export function day(ms, zone) {
  return when(ms, zone, { weekday: "short", day: "numeric", month: "short", ...year(ms, zone) });
}

/** A moment's day as 2026-11-25, by the studio's clock. */
export function dayKey(ms, zone) {
  return new Intl.DateTimeFormat("sv-SE", { timeZone: zone }).format(new Date(ms));
}

export function percent(part, whole) {
  return whole > 0 ? Math.round(100 * part / whole) + "\u00a0%" : "";
}

/** What came of a run, in a few words. */
export function result(run) {
  if (run.stations_cleared == null) return run.attempts ? `goes on, ${counted(run.attempts, "putt", "putts")} so far` : "goes on";
  return `${counted(run.stations_cleared, "station", "stations")} in ${counted(run.attempts, "putt", "putts")}`;
}

export function ending(run) {
  return run.ended_by ? endedBy(run.ended_by) : "";
}

export function missSaid(run) {
  if (run.attempts == null) return "";
  if (run.attempts === run.holed) return "none";
  return run.mean_miss_mm == null ? "not known" : length(run.mean_miss_mm);
}

export function tagsSaid(run) {
  return [{ "left-to-right": "left to right", "right-to-left": "right to left", straight: "straight" }[run.breaks], run.slope].filter(Boolean).join(", ");
}

/** A run as a row that leads to it; the roles hold where a phone shows it on lines of its own. */
export function runRow(run, zone, { player = true } = {}) {
  return html("tr", { role: "row" },
    html("td", { role: "cell", class: "when" }, html("a", { href: `/run/${run.id}` }, when(run.started_ms, zone))),
    ...(player ? [html("td", { role: "cell", class: "who" }, run.player.name == null ? named(run.player) : html("a", { href: `/player/${run.player.id}` }, run.player.name))] : []),
    html("td", { role: "cell", class: "what" }, run.drill?.name ?? "a drill whose beginning is missing", html("small", {}, tagsSaid(run))),
    html("td", { role: "cell", class: "came" }, result(run), html("small", {}, ending(run))),
    html("td", { role: "cell", class: "n holed" }, run.attempts == null ? "" : percent(run.holed, run.attempts)),
    html("td", { role: "cell", class: "n miss" }, missSaid(run)));
}

export function runHead({ player = true } = {}) {
  const head = ["When", ...(player ? ["Player"] : []), "Drill", "Result"].map(name => html("th", { scope: "col", role: "columnheader" }, name));
  return html("tr", { role: "row" }, ...head, html("th", { scope: "col", role: "columnheader", class: "n" }, "Holed"),
    html("th", { scope: "col", role: "columnheader", class: "n" }, "Mean miss"));
}

/**
 * A list that is fetched page by page.
 *
 * @param fetched given the cursor of the next page (null at first), gives {rows, next}
 * @param button  asks for more; hidden when there is none
 */
export function paged(into, button, fetched, row) {
  let next = null;
  let turn = 0;
  async function load(fresh) {
    const mine = fresh ? ++turn : turn;
    const got = await fetched(fresh ? null : next);
    if (mine !== turn) return got;
    next = got.next ?? null;
    const rows = got.rows.map(each => row(each, got));
    if (fresh) into.replaceChildren(...rows);
    else into.append(...rows);
    button.hidden = next == null;
    if (!fresh) rows[0]?.querySelector("a")?.focus();
    return got;
  }
  button.addEventListener("click", () => load(false));
  return () => load(true);
}

/** A query text of what is set. */
export function query(values) {
  const set = Object.entries(values).filter(([, value]) => value !== "" && value != null);
  return set.length ? "?" + new URLSearchParams(set) : "";
}
