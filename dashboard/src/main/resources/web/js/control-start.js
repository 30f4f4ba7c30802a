// Setting up a game: who, which drill, how the putt lies. What is chosen stays chosen whatever the lane does meanwhile.

import { get, trying } from "./api.js";
import { html } from "./draw.js";
import { adjusted, brief } from "./drill-words.js";
import { choice, stepper } from "./fields.js";
import { lead } from "./focus.js";
import { length } from "./units.js";
import { tags as tagged } from "./words.js";

const MOST_PLAYERS = 8;
const SHOWN = 12;
const GRIP_MM = 267;
const PUTTER_MM = 914.4;

const at = id => document.getElementById(id);
const game = { players: [], drills: [], picked: null, terms: null, tags: {}, names: [], more: false, going: false };

/** @param start called with {drill, players, tags} */
export function prepare(start) {
  at("who").addEventListener("input", showNames);
  at("who").addEventListener("keydown", event => {
    if (event.key === "Enter") {
      event.preventDefault();
      if (typed()) add(typed());
    }
  });
  at("add").addEventListener("click", () => {
    if (typed()) add(typed());
    lead([at("who")]);
  });
  at("start").addEventListener("submit", event => {
    event.preventDefault();
    if (game.players.length && game.picked) start({ drill: terms(), players: [...game.players], tags: { ...game.tags } });
    else at("who").focus();
  });
}

/** Opens it anew, from what was played last on the lane. */
export async function open(score) {
  game.players = [];
  game.tags = { ...(score?.tags ?? {}) };
  await trying(async () => {
    const [drills, names] = await Promise.all([get("/api/drills"), get("/api/names")]);
    game.names = names.names;
    game.drills = [...drills.own, ...drills.presets].map(each => each.drill);
    const same = game.drills.find(each => score?.drill && (each.name === score.drill.name || score.drill.name.startsWith(each.name + ", ")));
    pick(same ?? drills.presets[0].drill);
    showDrills();
  });
  showNames();
  showTags();
  showGo();
}

/** Whether a game is going on that starting another would end. */
export function note(score) {
  game.going = score.state === "playing" && score.players.some(each => each.attempts > 0);
  showGo();
}

/** Says lengths anew. */
export function sayAgain() {
  if (game.picked) {
    showDrills();
    showTerms();
  }
}

function typed() {
  return at("who").value.replace(/\s+/g, " ").trim();
}

function same(a, b) {
  return a.localeCompare(b, undefined, { sensitivity: "accent" }) === 0;
}

function add(name) {
  const known = [...game.players, ...game.names].find(each => same(each, name)) ?? name;
  if (!game.players.includes(known) && game.players.length < MOST_PLAYERS) game.players.push(known);
  if (!game.names.includes(known)) game.names.unshift(known);
  at("who").value = "";
  showNames();
  showGo();
}

function toggle(name) {
  const index = game.players.indexOf(name);
  if (index >= 0) game.players.splice(index, 1);
  else if (game.players.length < MOST_PLAYERS) game.players.push(name);
  if (typed()) at("who").value = "";
  showNames();
  showGo();
}

function showNames() {
  const text = typed();
  const found = game.names.filter(each => each.toLocaleLowerCase().includes(text.toLocaleLowerCase()));
  const shown = found.filter(each => !game.players.includes(each)).slice(0, text || game.more ? 60 : SHOWN);
  at("chosen").replaceChildren(...game.players.map((name, i) => chip(name, i)));
  at("names").replaceChildren(...shown.map(name => chip(name, -1)));
  if (!text && !game.more && game.names.length > game.players.length + SHOWN) {
    const more = html("button", { type: "button", class: "link" }, "More names");
    more.addEventListener("click", () => {
      game.more = true;
      showNames();
      lead([...at("names").querySelectorAll("button")].slice(SHOWN));
    });
    at("names").append(html("li", {}, more));
  }
  at("add").hidden = !text || [...game.names, ...game.players].some(each => same(each, text));
  at("add").textContent = "Add " + text;
}

function chip(name, order) {
  const button = html("button", { type: "button", class: "chip", "aria-pressed": String(order >= 0) },
    ...(order >= 0 ? [html("b", {}, String(order + 1))] : []), html("span", {}, name));
  button.addEventListener("click", () => {
    toggle(name);
    [...document.querySelectorAll("#chosen button, #names button")].find(each => each.lastChild.textContent === name)?.focus({ preventScroll: true });
  });
  return html("li", {}, button);
}

function pick(drill) {
  game.picked = drill;
  at("drills").querySelectorAll("input").forEach((input, i) => { input.checked = game.drills[i] === drill; });
  game.terms = { balls: drill.balls.count, limitMm: drill.overshoot?.limit_mm ?? null, penalty: drill.overshoot?.penalty ?? "none",
    turns: drill.duel?.turns ?? "station" };
  showTerms();
  showGo();
}

function terms() {
  return adjusted(game.picked, game.terms);
}

function showDrills() {
  at("drills").replaceChildren(...game.drills.map(drill => {
    const input = html("input", { type: "radio", name: "drill", checked: drill === game.picked });
    input.addEventListener("change", () => pick(drill));
    return html("label", {}, input, html("span", {}, html("b", {}, drill.name), html("small", {}, brief(drill))));
  }));
  const chosen = at("drills").querySelector(":checked");
  if (document.activeElement === document.body) chosen?.scrollIntoView?.({ block: "nearest" });
}

function showTerms() {
  const t = game.terms;
  const limits = [["", "The lane\u2019s own"], [String(GRIP_MM), `A grip, ${length(GRIP_MM)}`], [String(PUTTER_MM), `A putter, ${length(PUTTER_MM)}`]];
  const own = game.picked.overshoot?.limit_mm;
  if (own != null && own !== GRIP_MM && own !== PUTTER_MM) limits.push([String(own), length(own)]);
  at("terms").replaceChildren(
    stepper(game.picked.balls.supply === "whole-run" ? "Balls for the whole run" : "Balls at each station", { value: t.balls, min: 1, max: 20 }, n => { t.balls = n; showGo(); }),
    choice("limit", "A miss may run past by", limits, t.limitMm == null ? "" : String(t.limitMm), v => { t.limitMm = v === "" ? null : Number(v); showGo(); }),
    choice("penalty", "Further than that", [["none", "no penalty"], ["lose-ball", "lose a ball"], ["back-one", "a station back"], ["end-run", "run over"]], t.penalty,
      v => { t.penalty = v; showGo(); }),
    choice("turns", "In a duel", [["station", "a station each"], ["ball", "a putt each"]], t.turns, v => { t.turns = v; showGo(); }));
}

function showTags() {
  at("tags").replaceChildren(
    choice("break", "It turns", [["", "not said"], ["left-to-right", "left to right"], ["straight", "not at all"], ["right-to-left", "right to left"]], game.tags.break ?? "", v => tag("break", v)),
    choice("slope", "It goes", [["", "not said"], ["uphill", "uphill"], ["level", "level"], ["downhill", "downhill"]], game.tags.slope ?? "", v => tag("slope", v)));
  sayTags();
}

function tag(key, value) {
  if (value) game.tags[key] = value;
  else delete game.tags[key];
  sayTags();
}

function sayTags() {
  at("lie-said").textContent = tagged(game.tags) || "not said";
}

function showGo() {
  const [first, ...others] = game.players;
  at("go").textContent = !first ? "Choose who plays" : others.length === 0 ? `Start ${first} alone`
    : others.length === 1 ? `Start ${first} against ${others[0]}` : `Start a duel of ${game.players.length}`;
  at("go").toggleAttribute("data-not-yet", !first);
  // Until the drills are here there is nothing to start: a touch before would be lost without a word.
  at("go").disabled = Boolean(first) && !game.picked;
  at("go-hint").textContent = (game.picked && first ? terms().name + ". " : "") + (game.going ? "The game that is on ends with it." : "");
}
