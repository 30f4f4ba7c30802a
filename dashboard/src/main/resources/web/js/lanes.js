// The list of lanes, each a way to its board.

import { html } from "./draw.js";
import { watch } from "./live.js";

const STATES = { online: "on", offline: "switched off", lost: "out of reach", unheard: "not heard yet" };
const PLAY = { idle: "free putting", playing: "in play", over: "run over" };
const said = document.getElementById("said");
let known = [];
let there = false;

function show() {
  document.getElementById("lanes").replaceChildren(...known.map(each => html("li", {},
    html("a", { href: `/board/${each.studio}/${each.lane}` }, html("b", {}, each.lane.replaceAll("-", " ")),
      html("span", {}, each.state === "online" ? PLAY[each.play] : STATES[each.state])))));
  said.textContent = !there ? "The studio computer does not answer."
    : known.length ? "Choose a lane to see its board." : "No lane has been heard yet. One appears here as soon as it is.";
}

document.documentElement.dataset.light = "night";
watch("/live/lanes", {
  there: now => { there = now; show(); },
  pulse: () => {},
  lanes: lanes => { known = lanes; show(); },
});
