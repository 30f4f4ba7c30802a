// A drill's rules in words.

import { length } from "./units.js";
import { counted } from "./words.js";

export const PENALTIES = { none: "costs nothing more", "lose-ball": "costs another ball", "back-one": "leads a station back", "end-run": "ends the run" };

/** The distances of a drill's stations, mm. */
export function distances(drill) {
  const { first_mm, step_mm, count, at_mm } = drill.stations;
  return at_mm ?? Array.from({ length: count }, (_, i) => first_mm + i * step_mm);
}

function where(drill) {
  const all = distances(drill);
  if (all.length === 1) return "1 station, at " + length(all[0]);
  if (drill.stations.at_mm && all.length <= 5) return `${all.length} stations: ${all.map(length).join(", ")}`;
  const span = `${all.length} stations, ${length(Math.min(...all))} to ${length(Math.max(...all))}`;
  return drill.stations.at_mm || !drill.stations.step_mm ? span : `${span}, ${length(drill.stations.step_mm)} apart`;
}

/** In half a line. */
export function brief(drill) {
  const { count, supply } = drill.balls;
  const balls = counted(count, "ball", "balls") + (supply === "whole-run" ? " in all" : distances(drill).length > 1 ? " at each" : "");
  const all = distances(drill);
  const near = Math.min(...all), far = Math.max(...all);
  return `${counted(all.length, "station", "stations")}, ${near === far ? length(near) : length(near) + " to " + length(far)}; ${balls}`;
}

/** Sentence by sentence. */
export function sentences(drill) {
  const { count, supply } = drill.balls;
  const holed = drill.advance.holed;
  const said = [where(drill) + "."];
  said.push(supply === "whole-run"
    ? `${counted(count, "ball", "balls")} for the whole run: one that misses is gone, one that is holed comes back.`
    : `${counted(count, "ball", "balls")} at each stay at a station.`);
  said.push((holed === count && count > 1 ? `All ${holed}` : counted(holed, "ball", "balls")) + ` holed ${holed === 1 ? "clears" : "clear"} a station, and the next one follows. `
    + "Out of balls before that, the run ends.");
  said.push(`A miss ${limit(drill)} ${PENALTIES[drill.overshoot?.penalty ?? "none"]}.`);
  said.push(drill.duel?.turns === "ball" ? "In a duel each has one putt in turn." : "In a duel each has a stay at a station in turn.");
  return said;
}

function limit(drill) {
  const mm = drill.overshoot?.limit_mm;
  return mm == null ? "beyond the lane\u2019s own limit" : `that runs more than ${length(mm)} past`;
}

/** A drill with some of its terms changed, under a name that says so. */
export function adjusted(drill, { balls, limitMm, penalty, turns }) {
  const changed = structuredClone(drill);
  changed.balls.count = balls;
  changed.advance.holed = drill.advance.holed === drill.balls.count ? balls : Math.min(drill.advance.holed, balls);
  changed.overshoot = { ...(limitMm == null ? {} : { limit_mm: limitMm }), penalty };
  changed.duel = { turns };
  const differs = [];
  if (balls !== drill.balls.count) differs.push(counted(balls, "ball", "balls").replace("\u00a0", " "));
  if (limitMm !== (drill.overshoot?.limit_mm ?? null)) differs.push(limitMm == null ? "lane's limit" : `limit ${Math.round(limitMm / 10)} cm`);
  if (penalty !== drill.overshoot.penalty) differs.push({ none: "no penalty", "lose-ball": "lose a ball", "back-one": "a step back", "end-run": "one overshoot ends it" }[penalty]);
  if (differs.length) changed.name = Array.from(drill.name).slice(0, 78 - differs.join(", ").length).join("") + ", " + differs.join(", ");
  return changed;
}
