// What was changed in the record: by whom, when and why.

import { html } from "./draw.js";
import { when } from "./logbook.js";
import { length } from "./units.js";

const DONE = {
  "taken-back": () => "Taken back at the lane",
  voided: () => "Set not to count",
  restored: () => "Set to count again",
  rescored: each => `Score worked out again: ${scored(each.became)}; it was ${scored(each.was)}`,
  "not-rescored": each => `The score stays as it was, since it cannot be worked out again: ${each.became}`,
  reassigned: each => `Given from ${each.was ?? "somebody"} to ${each.became ?? "somebody"}`,
  renamed: each => `Renamed from ${each.was ?? "a name"} to ${each.became ?? "another"}`,
  merged: each => `${each.was ?? "Another name"} was the same person`,
  forgotten: () => "Name removed on request",
  imported: () => "Brought back from a file",
};

/** A score as the trail keeps it, in words. */
function scored(text) {
  return String(text ?? "").replace(/, beyond (\d+)$/, ", of which $1 from where the run would not have been: they clear no station")
    .replace("cleared", "stations cleared").replace("attempts", "putts").replace(/mean miss (\d+) mm/, (all, mm) => "mean miss " + length(Number(mm))).replaceAll("-", " ");
}

/** @param linked whether it leads to the run that it is about */
export function amended(each, zone, linked = false) {
  const what = (DONE[each.what] ?? (() => each.what))(each);
  const to = each.run ? `/run/${each.run}${each.attempt ? "#" + each.attempt : ""}` : null;
  return html("li", {}, linked && to ? html("a", { href: to }, what) : what, html("span", { class: "quiet" }, ` by ${each.by}, ${when(each.at_ms, zone)}`),
    each.reason ? html("p", {}, "\u201c" + each.reason + "\u201d") : "");
}
