// The run so far, or all runs of a duel, a row each.

import { SAID, html, kindOf, mark } from "./draw.js";
import { length } from "./units.js";
import { deciding, endedBy, missSaid } from "./words.js";

export function rows(into, score) {
  const players = score.players;
  const duel = players.length > 1;
  const decided = duel ? deciding(players, score.state === "over", score.winner) : { by: "", text: "", between: [] };
  into.toggleAttribute("data-many", players.length > 3);
  into.dataset.count = players.length;
  into.replaceChildren(...players.map((player, index) => row(score, player, index, decided.between.includes(player) ? decided.by : "")));
  for (const each of into.querySelectorAll(".trail")) {
    each.toggleAttribute("data-cut", each.firstElementChild?.offsetLeft < each.offsetLeft);
  }
  return decided.text;
}

function row(score, player, index, by) {
  const turn = score.state === "playing" && score.turn === index;
  return html("li", { "data-turn": turn, "aria-current": turn ? "true" : null },
    html("p", { class: "who", "data-long": player.player.length > 14 }, html("span", {}, player.player), html("small", {}, place(score, player, turn))),
    trail(score, player, turn),
    figure("cleared", by, player.stations_cleared, player.stations_cleared === 1 ? "station" : "stations"),
    figure("putts", by, player.attempts, player.attempts === 1 ? "putt" : "putts"),
    figure("misses", by, missSaid(player), "mean miss"));
}

function place(score, player, turn) {
  if (player.ended_by) return endedBy(player.ended_by);
  if (turn) return "to putt now";
  return `station ${player.station}, ${length(player.station_mm)}`;
}

function figure(kind, by, value, name) {
  return html("p", { class: "figure", "data-decides": kind === by }, html("b", {}, String(value)), name);
}

/** Each stay at a station in a box of its own, in order; the one going on has its balls to come drawn too. */
function trail(score, player, turn) {
  const visits = [];
  for (const putt of player.putts) {
    const last = visits[visits.length - 1];
    if (last && last.station === putt.station) last.putts.push(putt);
    else visits.push({ station: putt.station, putts: [putt] });
  }
  const going = !player.ended_by && score.state === "playing";
  if (going && (visits.length === 0 || visits[visits.length - 1].station !== player.station)) {
    visits.push({ station: player.station, putts: [] });
  }
  const boxes = visits.map((visit, i) => box(visit, going && i === visits.length - 1 ? player.balls_left : 0, turn && i === visits.length - 1));
  return html("ul", { class: "trail", "aria-label": "Putts of " + player.player }, ...boxes);
}

function box(visit, toCome, here) {
  const marks = visit.putts.map(putt => mark(kindOf(putt), SAID[kindOf(putt)] + (putt.how === "entered" ? ", entered by hand" : "")));
  for (let i = 0; i < Math.min(toCome, 12); i++) {
    marks.push(mark("to-come"));
  }
  return html("li", { "data-here": here }, html("span", {}, html("span", { class: "unseen" }, "station "), String(visit.station)),
    html("span", { class: "marks" }, ...marks));
}
