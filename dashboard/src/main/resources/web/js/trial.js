// Trying the sensors: what each has seen since the trial began, and what that says. No page and no clock in here: times
// are given, in seconds. A lane says how its sensors are every few seconds and within a second of an edge, each sensor's
// last edge to a tenth of a second; so a beam's order among others is told only where the ball takes longer than that.

const TENTH = 0.15;      // two edges may be told as simultaneous that are so far apart
const ROLLS = 8;         // s: no ball rolls longer between the first beam and the last
const CROSSING = 2;      // edges that one ball makes in one beam

/** @param beams [{name, position_mm}] along the line @param seen the newest health, for how busy the sensors were before */
export function begin(sensors, beams, score, now) {
  const places = new Map(beams.map(beam => [beam.name, beam.position_mm]));
  const order = [...sensors].sort((a, b) => RANK[a.kind] - RANK[b.kind] || (places.get(a.name) ?? 0) - (places.get(b.name) ?? 0));
  return {
    began: now, heard: null, sequence: score?.last?.sequence ?? null, attempt: null,
    checks: order.map(sensor => ({ name: sensor.name, kind: sensor.kind, position_mm: places.get(sensor.name) ?? null,
      quiet: sensor.edges_per_minute === 0, state: sensor.state, at: null, first: null, edges: null })),
  };
}

const RANK = { beam: 0, cup: 1, strike: 2, pedal: 3 };

/** Takes a health message that came after the beginning. */
export function heard(trial, health, now) {
  if (!health.sensors) return;
  trial.heard = now;
  for (const check of trial.checks) {
    const sensor = health.sensors.find(each => each.name === check.name && each.kind === check.kind);
    if (!sensor) continue;
    check.state = sensor.state;
    if (sensor.last_edge_s_ago != null && now - sensor.last_edge_s_ago > trial.began) {
      check.at = now - sensor.last_edge_s_ago;
      check.first ??= check.at;
      check.edges = check.quiet && now - trial.began < 58 ? sensor.edges_per_minute : null;
    }
  }
}

/** Takes a score that came after the beginning: the lane's own word on what rolled. */
export function scored(trial, score) {
  if (score.last && score.last.sequence !== trial.sequence) {
    trial.sequence = score.last.sequence;
    trial.attempt = score.last;
  }
}

/** What each check says now: {name, kind, position_mm, verdict: "waits" | "passed" | "failed", why}. */
export function verdicts(trial, now) {
  const beams = trial.checks.filter(check => check.kind === "beam");
  const last = Math.max(...beams.map(check => check.at ?? -Infinity));
  return trial.checks.map(check => ({ ...check, ...(check.kind === "beam" ? ofBeam(check, beams, last, now) : ofOther(check)) }));
}

/** "waits" until all have passed or one has failed; then that. Only what a ball can turn counts. */
export function outcome(all) {
  const balls = all.filter(each => each.kind === "beam" || each.kind === "cup");
  if (balls.some(each => each.verdict === "failed")) return "failed";
  return balls.length > 0 && balls.every(each => each.verdict === "passed") ? "passed" : "waits";
}

function ofBeam(check, beams, last, now) {
  const bad = outOfOrder(check);
  if (bad) return bad;
  if (check.at === null) {
    if (last === -Infinity || now - last < 2) return waits("");
    const beyond = beams.some(each => each.at !== null && each.position_mm > check.position_mm);
    if (beyond) return failed("unseen");
    return now - last < ROLLS ? waits("") : failed("unreached");
  }
  if (check.state === "blocked") return waits("blocked");
  const least = Math.min(...beams.filter(each => each.edges).map(each => each.edges));
  if (check.edges !== null && check.edges >= 3 * Math.max(CROSSING, least)) return failed("flickers");
  // By the first ball that each saw: another one may have stopped on its way since.
  if (beams.some(each => each.first !== null && each.position_mm < check.position_mm && each.first > check.first + TENTH)) {
    return failed("order");
  }
  return { verdict: "passed", why: "" };
}

function ofOther(check) {
  const bad = outOfOrder(check);
  if (bad) return bad;
  return check.at === null ? waits("") : { verdict: "passed", why: "" };
}

function outOfOrder(check) {
  if (check.state === "stuck" && check.at === null) return failed("never");
  return check.state === "stuck" || check.state === "chattering" ? failed(check.state) : null;
}

function waits(why) {
  return { verdict: "waits", why };
}

function failed(why) {
  return { verdict: "failed", why };
}
