// All runs, as asked for. What is asked stands in the address, so that it can be kept and sent.

import { Refused, get, session, tell, trying } from "./api.js";
import { html } from "./draw.js";
import { paged, query, runHead, runRow } from "./logbook.js";
import { nav } from "./nav.js";
import { amended } from "./trail.js";
import { counted } from "./words.js";

const at = id => document.getElementById(id);
const FIELDS = ["player", "drill", "breaks", "slope", "lane", "from", "to"];

function filter() {
  return Object.fromEntries(FIELDS.map(id => [id, at(id).value]));
}

const load = paged(at("rows"), at("further"), after => get("/api/runs" + query({ ...filter(), after })),
  (run, got) => runRow(run, got.zone));

async function show() {
  const asked = filter();
  history.replaceState(null, "", location.pathname + query(asked));
  at("clear").hidden = FIELDS.every(id => asked[id] === "");
  const got = await trying(load);
  if (!got) return;
  const narrowed = FIELDS.some(id => asked[id] !== "");
  at("said").textContent = got.rows.length === 0 ? (narrowed ? "No run is like that." : "No run has been played yet.")
    : got.next ? "The newest first." : `${counted(got.rows.length, "run", "runs")}, the newest first.`;
  const link = (name, choice) => html("a", { class: "button", download: true, href: "/api/runs/export" + query({ ...asked, ...choice }) }, name);
  at("take").replaceChildren(link("Runs as CSV", { as: "csv", sheet: "runs" }), link("Putts as CSV", { as: "csv", sheet: "attempts" }),
    link("Both as JSON", { as: "json" }));
}

/** The players to choose from; those that stay come first. */
function offer(players, staying) {
  const options = players.filter(each => !staying.some(option => option.value === String(each.id)))
    .map(player => html("option", { value: player.id }, player.name));
  at("player").replaceChildren(at("player").options[0], ...staying, ...options);
}

/** Looks for players where there are too many for one list; who is chosen stays in it. */
async function find() {
  const name = at("find").value.trim();
  const got = await trying(() => get("/api/runs/choices" + query({ name })));
  if (!got || name !== at("find").value.trim()) return;
  offer(got.players, at("player").value ? [at("player").selectedOptions[0]] : []);
  at("found").textContent = name === "" ? "" : got.players.length === 0 ? "Nobody is called that."
    : `${counted(got.players.length, "player", "players")} to choose below${got.more ? ", and more" : ""}.`;
}

let waiting = 0;
at("find").addEventListener("input", () => {
  clearTimeout(waiting);
  waiting = setTimeout(find, 250);
});

/** Fills what can be chosen, then takes what the address asks for. */
async function begin() {
  at("head").replaceChildren(runHead());
  const choices = await trying(() => get("/api/runs/choices"));
  if (!choices) return;
  at("finding").hidden = !choices.more;
  offer(choices.players, []);
  at("drill").append(...choices.drills.map(drill => html("option", { value: drill }, drill)));
  at("lane").append(...choices.lanes.map(lane => html("option", { value: lane.id }, lane.lane.replaceAll("-", " "))));
  const asked = new URLSearchParams(location.search);
  const wanted = asked.get("player");
  if (wanted && choices.more && !choices.players.some(each => String(each.id) === wanted)) {
    const one = await trying(() => get("/api/player/" + encodeURIComponent(wanted)));
    if (one?.player.name) offer([one.player, ...choices.players], []);
  }
  for (const [id, value] of asked) {
    if (FIELDS.includes(id)) at(id).value = value;
  }
  if (matchMedia("(max-width: 40rem)").matches && location.search === "") at("narrow").open = false;
  await show();
}

const NAMES = { players: "players", runs: "runs", attempts: "putts", notes: "notes", changes: "changes" };

function said(came) {
  const sum = counts => Object.values(counts).reduce((all, each) => all + each, 0);
  const parts = Object.entries(NAMES).filter(([sheet]) => came.added[sheet]).map(([sheet, name]) => `${came.added[sheet].toLocaleString()} ${name}`);
  tell((parts.length ? "New here: " + parts.join(", ") + "." : "Nothing of it is new.") + (sum(came.known) ? ` ${sum(came.known).toLocaleString()} rows were here already.` : ""));
  at("bring-wrong").textContent = came.left_out === 0 ? "" : `${counted(came.left_out, "row was", "rows were")} left out. ${came.problems.slice(0, 5).join(" ")}`;
}

async function bring(file) {
  const { token } = await session();
  let answer;
  try {
    answer = await fetch("/api/import", { method: "POST", body: file, credentials: "same-origin",
      headers: { "Content-Type": /\.csv$/i.test(file.name) ? "text/csv" : "application/json", Accept: "application/json", "X-Cupbeam-Token": token ?? "" } });
  } catch {
    throw new Refused(0, "The studio computer does not answer, or the file could not be read. What had come of it may be kept.");
  }
  const said = await answer.json().catch(() => null);
  if (!answer.ok) throw new Refused(answer.status, said?.error ?? `The studio computer refused (${answer.status}).`);
  return said;
}

const changes = paged(at("trail"), at("earlier"), after => get("/api/changes" + query({ after })), (each, got) => amended(each, got.zone, true));
at("changes").addEventListener("toggle", () => at("changes").open && trying(async () => {
  const got = await changes();
  if (got.rows.length === 0) at("trail").replaceChildren(html("li", {}, "Nothing."));
}));
at("filter").addEventListener("change", event => event.target.id !== "find" && show());
at("filter").addEventListener("submit", event => event.preventDefault());
at("filter").addEventListener("reset", () => setTimeout(() => {
  if (!at("finding").hidden) find();
  show();
}));
at("bring").addEventListener("submit", async event => {
  event.preventDefault();
  const button = at("bring").querySelector("button");
  at("bring-wrong").textContent = "";
  button.setAttribute("aria-busy", "true");
  try {
    const came = await bring(at("file").files[0]);
    said(came);
    at("bring").reset();
    await show();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    at("bring-wrong").textContent = error.message;
  } finally {
    button.removeAttribute("aria-busy");
  }
});
nav("/runs", () => trying(load));
begin();
