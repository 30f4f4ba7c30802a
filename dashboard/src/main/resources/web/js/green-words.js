// How a green's speed and a ball's are said.

import { usesFeet } from "./units.js";

const M_PER_FT = 0.3048;

/** A green's speed: golfers everywhere say it in feet; metres go with it where lengths are metric. */
export function speed(ft) {
  return ft.toFixed(1) + "\u00a0ft" + (usesFeet() ? "" : ` (${(ft * M_PER_FT).toFixed(2)}\u00a0m)`);
}

/** A ball's speed. */
export function ball(mmPerS) {
  return usesFeet() ? (mmPerS / 304.8).toFixed(1) + "\u00a0ft/s" : (mmPerS / 1000).toFixed(2) + "\u00a0m/s";
}

/** A slope along the line, uphill positive. */
export function along(percent) {
  const size = Math.abs(percent).toFixed(1);
  return size === "0.0" ? "level along the line" : `${size}\u00a0% ${percent > 0 ? "uphill" : "downhill"}`;
}

/** A slope across the line, falling to the left positive. */
export function across(percent) {
  const size = Math.abs(percent).toFixed(1);
  return size === "0.0" ? "level across it" : `${size}\u00a0% falling to the ${percent > 0 ? "left" : "right"}`;
}

/** Of a lane's key, "studio/lane", the lane as people call it. */
export function laneName(lane) {
  return lane.replaceAll("-", " ");
}

/** The last test by rolled balls. */
export function testSaid(test, zone) {
  const when = new Date(test.at_ms).toLocaleString(undefined, { day: "numeric", month: "short", hour: "2-digit", minute: "2-digit", timeZone: zone });
  return `Last test with rolled balls, ${when}: ${speed(test.stimp_ft)}, ${test.low_ft.toFixed(1)} to ${test.high_ft.toFixed(1)}, the line ${along(test.uphill_percent)}; ${test.balls} balls, kept by ${test.by}.`;
}
