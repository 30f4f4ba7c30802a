// Which lane to run.

import { html } from "./draw.js";
import { watch } from "./live.js";
import { nav } from "./nav.js";

const STATES = { online: "on", offline: "switched off", lost: "out of reach", unheard: "not heard yet" };
const PLAY = { idle: "free putting", playing: "in play", over: "run over" };
const said = document.getElementById("said");

nav("/control");
watch("/live/lanes", {
  there: there => { if (!there) said.textContent = "The studio computer does not answer."; },
  pulse: () => {},
  lanes: lanes => {
    said.textContent = lanes.length ? "" : "No lane has been heard yet. One appears here as soon as it is.";
    document.getElementById("lanes").replaceChildren(...lanes.map(each => html("li", {}, html("a", { href: `/control/${each.studio}/${each.lane}` },
      html("b", {}, each.lane.replaceAll("-", " ")), html("span", { class: "quiet" }, each.state === "online" ? PLAY[each.play] : STATES[each.state])))));
  },
});
