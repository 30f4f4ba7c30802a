// What a league is, in words.

import { brief } from "./drill-words.js";
import { length } from "./units.js";
import { counted, tags } from "./words.js";

/** A day of the calendar, as the league's own clock has it: no zone moves it. */
export function day(iso, options = { day: "numeric", month: "short", year: "numeric" }) {
  return new Date(iso + "T12:00:00Z").toLocaleDateString(undefined, { ...options, timeZone: "UTC" });
}

export function dates(league) {
  return `${day(league.weeks[0].from)} to ${day(league.weeks.at(-1).to)}`;
}

/** How far it is. */
export function state(league) {
  const all = league.weeks.length;
  if (league.now === 0) return "Begins " + day(league.weeks[0].from, { weekday: "short", day: "numeric", month: "short" });
  return league.now > all ? "Over" : `Week ${league.now} of ${all}`;
}

export function studios(league) {
  return league.studios.length === 0 ? "all studios" : league.studios.join(", ");
}

/** The rules, sentence by sentence. */
export function rules(league) {
  const lies = tags({ break: league.breaks, slope: league.slope });
  const runs = league.runs === 1 ? "best run counts" : `${league.runs} best runs count, added up`;
  return `${league.drill.name}: ${brief(league.drill)}${lies ? ", " + lies : ""}. In ${studios(league)}. Each week each player\u2019s ${runs}. `
    + `More stations cleared come first, then fewer putts, then nearer misses; who is level shares a place. Weeks begin on Monday, 0:00, by the clock of ${league.zone}.`;
}

export function miss(figures) {
  if (figures.attempts === figures.holed) return "none";
  return figures.miss_mm == null ? "not known" : length(figures.miss_mm);
}

/** Which studios a week that is over has heard: [whether all have been, the sentence]. */
export function heard(week, league) {
  const { studios: all, behind } = week.heard;
  const until = day(league.weeks[week.number - 1].to, { weekday: "long", day: "numeric", month: "long" });
  if (all === 0) return [true, ""];
  const so = `${all - behind.length} of ${counted(all, "studio", "studios")} heard up to ${until}`;
  if (behind.length === 0) return [true, so + "."];
  const when = each => each.heard_ms === 0 ? `${each.studio}: never heard` : `${each.studio}: heard up to `
    + new Date(each.heard_ms).toLocaleString(undefined, { weekday: "short", day: "numeric", month: "short", hour: "numeric", minute: "2-digit", timeZone: league.zone });
  return [false, `${so}. ${behind.slice(0, 8).map(when).join("; ")}${behind.length > 8 ? `; and ${behind.length - 8} more` : ""}. What they send later still counts for this week.`];
}
