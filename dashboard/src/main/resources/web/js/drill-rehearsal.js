// What a drill's rules do: putts that are made up, played through by the host's own rules, each told in words. Any of
// them can be made another.

import { send } from "./api.js";
import { html, mark } from "./draw.js";
import { choice } from "./fields.js";
import { length } from "./units.js";
import { counted, endedBy } from "./words.js";

const KINDS = { h: ["holed", "in"], s: ["short", "miss"], m: ["missed", "miss"], p: ["past the limit", "past"] };
const ORDER = "hsmp";
const MOST = 400;
const SHOWN = 40;

/** A rehearsal in a place of the page; show(drill) plays it anew. */
export function rehearsal(place) {
  let drill = null;
  let duel = false;
  let putts = madeUp();
  let asked = 0;
  let all = false;
  const lines = html("ol", { class: "lines" });
  const end = html("p", { class: "end", role: "status" });
  const other = html("button", { type: "button" }, "Other putts");
  const rest = html("button", { type: "button", hidden: true }, "Show all");
  other.addEventListener("click", () => { putts = madeUp(); play(); });
  rest.addEventListener("click", () => { all = true; play(); });
  place.replaceChildren(html("h2", {}, "Try the rules"),
    html("p", { class: "hint" }, "Made-up putts. Touch what became of one to make it another."),
    html("div", { class: "spread" }, choice(place.id + "-duel", "Who", [["", "one alone"], ["duel", "a duel"]], "", value => { duel = value === "duel"; play(); }), other),
    lines, rest, end);

  async function play() {
    if (!drill) return;
    const mine = ++asked;
    try {
      const played = await send("POST", "/api/drill-rehearsal", { drill, duel, putts });
      if (mine === asked) show(played);
    } catch (error) {
      if (mine === asked) end.textContent = error.message;
    }
  }

  function show(played) {
    const shown = all ? played.lines : played.lines.slice(0, SHOWN);
    lines.replaceChildren(...shown.map((line, i) => html("li", {}, html("span", { class: "from" }, (duel ? line.player + ", " : "") + `station ${line.station}, ${length(line.station_mm)}`),
      outcome(line, i), html("span", { class: "then" }, came(line)))));
    rest.hidden = shown.length === played.lines.length;
    rest.textContent = `Show all ${played.lines.length}`;
    end.textContent = played.over ? ended(played) : "It would go on.";
  }

  function outcome(line, i) {
    const [words, kind] = KINDS[line.putt];
    const button = html("button", { type: "button", "aria-label": `Putt ${i + 1}: ${words}. Make it another.` }, mark(kind), words);
    button.addEventListener("click", async () => {
      putts = putts.slice(0, i) + ORDER[(ORDER.indexOf(line.putt) + 1) % ORDER.length] + putts.slice(i + 1);
      await play();
      lines.children[i]?.querySelector("button").focus({ preventScroll: true });
    });
    return button;
  }

  return {
    show(next) {
      drill = next;
      play();
    },
  };
}

function came(line) {
  const lost = line.lost_ball ? "costs another ball; " : "";
  if (line.ended_by) return lost + endedBy(line.ended_by) + ": the run is over";
  if (line.cleared) return `clears the station: on to ${line.to_station}`;
  if (line.to_station < line.station) return `a step back, to station ${line.to_station}`;
  return lost + counted(line.balls_left, "ball left", "balls left");
}

function ended(played) {
  const sides = played.sides.map(side => `${played.sides.length > 1 ? side.player + ": " : ""}${counted(side.stations_cleared, "station", "stations")} in ${counted(side.attempts, "putt", "putts")}`);
  const won = played.sides.length > 1 ? (played.winner ? `${played.winner} wins. ` : "Nobody wins. ") : "";
  return won + sides.join("; ") + ".";
}

function madeUp() {
  return Array.from({ length: MOST }, () => "hhhhhhhhhsssmmmmmmpp"[Math.floor(Math.random() * 20)]).join("");
}
