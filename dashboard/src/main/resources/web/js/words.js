// What the board says, in sentences.

import { length, small } from "./units.js";

/** Nearer than this along the line, a miss lies beside the hole: half a hole and half a ball. */
const BESIDE_MM = 75.3;

export function counted(n, one, many) {
  return n + "\u00a0" + (n === 1 ? one : many);
}

export function tags(given) {
  const said = [];
  if (given?.break === "straight") said.push("straight");
  if (given?.break === "left-to-right") said.push("breaks left to right");
  if (given?.break === "right-to-left") said.push("breaks right to left");
  if (given?.slope) said.push(given.slope);
  return said.join(", ");
}

/** How a putt ended: [the word that counts, the rest, what goes with it], and the kind of end. */
export function putt(attempt, limitMm) {
  const details = [];
  if (attempt.how === "entered") details.push("entered by hand");
  if (attempt.rim) details.push("touched the rim");
  if (attempt.outcome === "missed" && attempt.finish_mm != null && Math.abs(attempt.finish_mm) < BESIDE_MM) {
    details.push("beside the hole");
  }
  if (attempt.outcome === "holed") {
    if (attempt.pace_mm != null) {
      details.unshift("would have stopped " + length(attempt.pace_mm) + (attempt.pace_mm < 0 ? " short" : " past"));
    }
    return { end: "holed", key: "Holed", rest: "", details };
  }
  const end = attempt.overshoot ? "past" : "miss";
  const key = attempt.overshoot ? "Past the limit" : "Missed";
  return { end, key, rest: finish(attempt, limitMm), details };
}

function finish(attempt, limitMm) {
  if (attempt.finish_mm != null) {
    return ", " + length(attempt.finish_mm) + (attempt.finish_mm < 0 ? " short" : " past the hole");
  }
  const [low, high] = attempt.finish_between_mm ?? [null, null];
  if (high != null && high <= 0) return ", short of the hole";
  if (low != null && low > 0 && attempt.overshoot) return ", by more than " + small(Math.max(1, low - limitMm));
  if (low != null && high != null) return ", between " + length(low) + " and " + length(high) + " past";
  return attempt.overshoot ? "" : ", within the limit";
}

/** Where the light beams stand, for whoever does not see them drawn. */
export function beamsSaid(beams) {
  const side = (all, where) => all.length ? [all.map(each => length(each.position_mm)).join(", ") + where] : [];
  const said = [...side(beams.filter(each => each.position_mm < 0), " before the hole"), ...side(beams.filter(each => each.position_mm >= 0), " past it")];
  return said.length ? "The line is drawn to scale, with its light beams: " + said.join("; ") + "." : "";
}

/** Half the interval that holds the finish 95 times in 100; null where there is none. */
export function halfWidth(attempt) {
  const [low, high] = attempt.finish_between_mm ?? [null, null];
  if (low != null && high != null) return (high - low) / 2;
  return attempt.finish_sd_mm == null ? null : 1.96 * attempt.finish_sd_mm;
}

export function endedBy(reason) {
  return {
    "out-of-balls": "out of balls", "cleared-all": "every station cleared", "overshoot": "ended past the limit",
    "duel": "duel decided", "stopped": "stopped",
  }[reason] ?? "";
}

function missOf(player) {
  if (player.attempts === player.holed) return 0;
  return player.mean_miss_mm ?? Infinity;
}

/** Which of two comes first, by the drill's order of merit: below zero where the first does. */
export function compare(a, b) {
  return b.stations_cleared - a.stations_cleared || a.attempts - b.attempts || sign(missOf(a) - missOf(b));
}

function sign(difference) {
  return Number.isNaN(difference) ? 0 : Math.sign(difference);
}

/** What decides between the two best of a duel: which figure, between whom, and the sentence. */
export function deciding(players, over, winner) {
  const [a, b] = [...players].sort(compare);
  const between = [a, b];
  const first = over ? (winner ?? a.player) : a.player;
  const verb = over ? " wins" : " leads";
  const cleared = counted(a.stations_cleared, "station", "stations");
  if (a.stations_cleared !== b.stations_cleared) {
    return { by: "cleared", between, text: `${first}${verb} on stations, ${a.stations_cleared} to ${b.stations_cleared}` };
  }
  if (a.attempts !== b.attempts) {
    const so = over ? `${first}${verb} on fewer putts` : `fewer putts put ${first} ahead`;
    return { by: "putts", between, text: `Level at ${cleared}; ${so}, ${a.attempts} to ${b.attempts}` };
  }
  if (sign(missOf(a) - missOf(b)) !== 0) {
    const so = over ? `${first}${verb} on nearer misses` : `nearer misses put ${first} ahead`;
    return { by: "misses", between, text: `Level at ${cleared} and ${counted(a.attempts, "putt", "putts")}; ${so}, `
      + `${missSaid(a)} to ${missSaid(b)}` };
  }
  return { by: "", between, text: over ? "Level on stations, putts and misses: nobody wins" : "Level on stations, putts and misses" };
}

export function missSaid(player) {
  const miss = missOf(player);
  if (player.attempts === player.holed) return "none";
  return miss === Infinity ? "not known" : length(miss);
}

/** Whether what is shown of a lane is what is: [live, waiting or away; the same in a word or two; what stands between, if anything]. */
export function standing({ there, broker, health, score }) {
  if (!there) {
    return ["away", "Studio away", score ? "The studio computer does not answer. This is how things stood when it last did."
      : "The studio computer does not answer yet."];
  }
  if (!broker) return ["away", "Lanes unheard", "The studio computer cannot hear its lanes. This is how things stood when it last could."];
  if (health?.state === "lost") return ["away", "Lane lost", "The lane has stopped answering. No putt is lost: it is shown once the lane is back."];
  if (health?.state === "offline") return ["away", "Lane off", "The lane is switched off."];
  if (!health && !score) return ["waiting", "Nothing heard yet", ""];
  if (health?.rolls) return ["waiting", "Green test", "The green's speed is being tested with rolled balls: putts are not counted until that ends."];
  return ["live", "Live", health?.faults?.length ? "Needs a look: " + health.faults.join("; ") : ""];
}
