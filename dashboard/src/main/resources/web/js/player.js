// One player: what they played, what was said of them, and what may be done with it.

import { get, send, tell, trying } from "./api.js";
import { html } from "./draw.js";
import { day, dayKey, named, paged, query, runHead, runRow } from "./logbook.js";
import { nav } from "./nav.js";
import { notes } from "./notes.js";
import { amended } from "./trail.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const id = location.pathname.split("/")[2];
const path = "/api/player/" + id;
let now = null;

const runs = paged(at("rows"), at("further"), after => get("/api/runs" + query({ player: id, limit: 12, after })),
  (run, got) => runRow(run, got.zone, { player: false }));

async function load() {
  const got = await trying(() => get(path));
  if (!got) {
    if (!now) at("said").textContent = "There is no such player, or they cannot be had at present.";
    return;
  }
  now = got;
  show();
}

function show() {
  const player = now.player;
  const gone = player.name == null;
  document.title = named(player);
  at("merged").hidden = player.merged_into == null;
  at("merged").replaceChildren("This name was the same person as ", html("a", { href: "/player/" + player.merged_into }, "another player"), "; the runs are there.");
  at("name").textContent = gone ? "A player who was forgotten" : player.name;
  at("said").textContent = [player.hand ? player.hand + "-handed" : "", player.remark].filter(Boolean).join(" \u00b7 ");
  at("known").hidden = false;
  figures(player);
  at("ways").replaceChildren(...(player.last_ms == null ? [] : [html("a", { class: "button", "data-right": "coach", href: "/insight/" + id }, "What the numbers say"), html("a", { class: "button main", "data-right": "coach", href: `/report/${id}?day=${dayKey(player.last_ms, now.zone)}` }, "Report of the last session")]));
  notes(at("notes"), now.notes, { on: path + "/notes", zone: now.zone, title: "A note on this player", changed: load });
  at("trail").replaceChildren(...now.trail.map(each => amended(each, now.zone)));
  at("trail-none").hidden = now.trail.length > 0;
  at("all").href = path + "/export?as=json";
  for (const section of ["about-of", "notes-of"]) at(section).closest("section").hidden = gone;
  at("forget").hidden = gone;
  if (document.activeElement?.form !== at("about")) fill(player);
}

function figures(player) {
  const shown = [
    ["Runs", player.runs.toLocaleString(), ""],
    ["Last played", player.last_ms == null ? "never" : day(player.last_ms, now.zone), ""],
    ["Known since", day(player.created_ms, now.zone), ""],
  ];
  at("figs").replaceChildren(...shown.map(([name, value, more]) => html("div", {}, html("dt", {}, name), html("dd", {}, html("b", {}, value), html("span", {}, more)))));
}

function fill(player) {
  at("called").value = player.name ?? "";
  at("remark").value = player.remark ?? "";
  for (const radio of at("about").querySelectorAll("input[type=radio]")) radio.checked = radio.value === (player[radio.name] ?? "");
}

at("about").addEventListener("submit", event => {
  event.preventDefault();
  at("about-wrong").textContent = "";
  trying(async () => {
    try {
      await send("PUT", path, { name: at("called").value.trim(), remark: at("remark").value.trim() || null,
        hand: at("about").elements.hand.value || null, units: at("about").elements.units.value || null });
      tell("Kept.");
      await load();
    } catch (error) {
      if (error.status !== 400 && error.status !== 409) throw error;
      at("about-wrong").textContent = error.message;
    }
  });
});
at("merge").addEventListener("submit", event => {
  event.preventDefault();
  at("merge-wrong").textContent = "";
  trying(async () => {
    const found = (await get("/api/players?name=" + encodeURIComponent(at("same").value.trim()))).rows
      .filter(each => each.name.localeCompare(at("same").value.trim(), undefined, { sensitivity: "accent" }) === 0);
    if (found.length !== 1 || found[0].id === now.player.id) {
      at("merge-wrong").textContent = found.length === 1 ? "That is this player." : "Nobody else is called exactly that.";
      return;
    }
    await send("POST", path + "/merge", { into: found[0].id });
    location.assign("/player/" + found[0].id);
  });
});
at("forget").addEventListener("click", () => {
  at("again").value = "";
  at("sure-wrong").textContent = "";
  at("sure").showModal();
});
at("sure-form").addEventListener("submit", event => {
  if (event.submitter?.value !== "forget") return;
  if (at("again").value.trim() !== now.player.name) {
    event.preventDefault();
    at("sure-wrong").textContent = "That is not the name.";
    return;
  }
  trying(async () => {
    const { mentions } = await send("DELETE", path);
    tell(mentions.length === 0 ? "The player is forgotten."
      : `The player is forgotten. The name still stands in ${counted(mentions.length, "note", "notes")} on others: see whether it should.`,
    mentions.length === 0 ? "done" : "refused");
    await load();
    await runs();
  });
});
at("head").replaceChildren(runHead({ player: false }));
nav("/players", () => { if (now) { show(); trying(runs); } });
load();
trying(runs);
