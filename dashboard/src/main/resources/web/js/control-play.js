// The game that is on, as whoever runs it needs it.

import { html, kindOf, mark } from "./draw.js";
import { length } from "./units.js";
import { counted, deciding, endedBy, missSaid, putt } from "./words.js";

const at = id => document.getElementById(id);

export function showPlay(score) {
  const playing = score.state === "playing" && score.players.length > 0;
  const over = score.state === "over" && score.players.length > 0;
  const duel = score.players.length > 1;
  at("play").toggleAttribute("data-over", !playing);
  if (playing) {
    const player = score.players[score.turn ?? 0];
    says("To putt", player.player, `${length(player.station_mm)}, station ${player.station} of ${score.drill.stations.count ?? score.drill.stations.at_mm.length}, `
      + counted(player.balls_left, "ball left", "balls left"));
  } else if (over) {
    const player = score.players[0];
    says(duel ? "Duel over" : "Run over", duel ? (score.winner ? score.winner + " wins" : "Nobody wins") : player.player,
      (duel ? deciding(score.players, true, score.winner).text : `${counted(player.stations_cleared, "station", "stations")} in ${counted(player.attempts, "putt", "putts")}, ${endedBy(player.ended_by)}`)
      + ". The next putt begins anew.");
  } else {
    says("No game is on", "Free putting", "Every putt is seen and kept, and counts for nobody.");
  }
  last(score);
  sides(score);
}

function says(eyebrow, name, where) {
  at("turn-said").textContent = eyebrow;
  at("name").textContent = name;
  at("where").textContent = where;
}

function last(score) {
  if (!score.last) {
    at("last").replaceChildren("Nobody has putted yet.");
    return;
  }
  at("last").replaceChildren(mark(kindOf(score.last.attempt)), html("span", {}, lastWords(score)));
}

/** The last attempt by no more than whose it was and what kind, as "Ada: holed". */
export function lastInShort(score) {
  return (score.last.player ? score.last.player + ": " : "") + putt(score.last.attempt, score.limit_mm).key.toLowerCase();
}

function lastWords(score) {
  const words = putt(score.last.attempt, score.limit_mm);
  return (score.last.player ? score.last.player + ": " : "") + words.key.toLowerCase() + words.rest
    + (score.last.attempt.how === "entered" ? ", entered by hand" : "");
}

function sides(score) {
  const decided = score.players.length > 1 ? deciding(score.players, score.state === "over", score.winner) : { text: "" };
  at("sides").replaceChildren(...score.players.map((player, i) => html("li", { "aria-current": score.turn === i && score.state === "playing" ? "true" : null },
    html("b", {}, player.player),
    html("span", { class: "marks", role: "img", "aria-label": marksSaid(player) }, ...player.putts.slice(-9).map(each => mark(kindOf(each)))),
    html("span", { class: "figures" }, `${counted(player.stations_cleared, "station", "stations")}, ${counted(player.attempts, "putt", "putts")}, ${player.attempts === player.holed ? "no miss" : "mean miss " + missSaid(player)}`))),
  ...(decided.text && score.state === "playing" ? [html("li", { class: "deciding" }, decided.text)] : []));
}

function marksSaid(player) {
  const holed = player.putts.slice(-9).filter(each => each.outcome === "holed").length;
  return `${holed} holed of the last ${Math.min(9, player.putts.length)}`;
}
