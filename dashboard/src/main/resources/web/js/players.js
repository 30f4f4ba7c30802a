// Everybody who has played.

import { get, send, trying } from "./api.js";
import { html } from "./draw.js";
import { day, named, paged, query } from "./logbook.js";
import { nav } from "./nav.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);

function asked() {
  return { name: at("name").value.trim(), by: at("search").elements.by.value };
}

const load = paged(at("rows"), at("further"), after => get("/api/players" + query({ ...asked(), after })), (player, got) => html("tr", {},
  html("th", { scope: "row" }, html("a", { href: `/player/${player.id}` }, named(player)), html("small", {}, player.remark ?? "")),
  html("td", {}, player.last_ms == null ? "never" : day(player.last_ms, got.zone)),
  html("td", { class: "n" }, player.runs.toLocaleString())));

async function show() {
  const { name, by } = asked();
  const got = await trying(load);
  if (!got) return;
  at("said").textContent = got.rows.length === 0 ? (name ? "Nobody is called that." : "Nobody has played yet.")
    : name ? `Found ${counted(got.total, "player", "players")}.`
      : by === "name" ? `All ${counted(got.total, "player", "players")}, by name.`
        : `The ${counted(got.rows.length, "player", "players")} who played last, of ${got.total.toLocaleString()}.`;
}

let waiting = 0;
at("name").addEventListener("input", () => {
  clearTimeout(waiting);
  waiting = setTimeout(show, 250);
});
at("search").addEventListener("change", event => event.target.name === "by" && show());
at("search").addEventListener("submit", event => { event.preventDefault(); show(); });
at("new").addEventListener("submit", event => {
  event.preventDefault();
  at("new-wrong").textContent = "";
  trying(async () => {
    try {
      const made = await send("POST", "/api/players", { name: at("new-name").value.trim() });
      location.assign("/player/" + made.id);
    } catch (error) {
      if (error.status !== 400) throw error;
      at("new-wrong").textContent = error.message;
    }
  });
});
at("take").replaceChildren(...["csv", "json"].map(as => html("a", { class: "button", download: true, href: "/api/players/export?as=" + as }, as.toUpperCase())));
nav("/players");
show();
