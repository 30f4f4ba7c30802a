// The shelf of drills: to look at, try, copy, make, change, and hand on as files. Where one is, is in the address: # is
// the shelf, #own-3 and #preset-ladder one drill, #edit the one that is being written.

import { get, send, tell, trying } from "./api.js";
import { html } from "./draw.js";
import { draw } from "./drill-form.js";
import { stationStrip } from "./drill-strip.js";
import { rehearsal } from "./drill-rehearsal.js";
import * as text from "./drill-text.js";
import { brief, distances, sentences } from "./drill-words.js";
import { nav } from "./nav.js";

const at = id => document.getElementById(id);
const FIRST_DRAFT = { name: "", stations: { first_mm: 1000, step_mm: 500, count: 6 }, balls: { count: 3, supply: "every-station" },
  advance: { holed: 1 }, overshoot: { limit_mm: 914.4, penalty: "none" }, duel: { turns: "station" } };

const shelf = { own: [], presets: [] };
/** What is being written: {drill, good, from}; from is the entry that it changes, null for a new one. */
let draft = null;
const oneTry = rehearsal(at("one-try"));
const editTry = rehearsal(at("edit-try"));

async function load() {
  const got = await trying(() => get("/api/drills"));
  if (got) Object.assign(shelf, got);
}

async function route() {
  const where = location.hash.slice(1);
  if (!where.startsWith("edit") || !draft) await load();
  const entry = find(where);
  const editing = where === "edit" && draft !== null;
  at("shelf").hidden = editing || entry !== null;
  at("one").hidden = entry === null;
  at("edit").hidden = !editing;
  if (entry) showOne(entry);
  else if (!editing) showShelf();
}

function find(where) {
  const own = /^own-(\d+)$/.exec(where);
  if (own) return shelf.own.find(each => each.id === Number(own[1])) ?? null;
  const preset = /^preset-(.+)$/.exec(where);
  return preset ? shelf.presets.find(each => each.key === preset[1]) ?? null : null;
}

function showShelf() {
  const far = Math.max(...[...shelf.own, ...shelf.presets].flatMap(each => distances(each.drill)));
  const ways = (list, href) => list.map(each => html("li", {}, html("a", { href: href(each) },
    html("span", { class: "entry" }, html("b", {}, each.drill.name), html("span", { class: "quiet brief" }, brief(each.drill)), stationStrip(each.drill, far),
      html("span", { class: "quiet rules" }, ...sentences(each.drill).map(words => html("span", {}, words)))))));
  at("own").replaceChildren(...ways(shelf.own, each => "#own-" + each.id));
  at("presets").replaceChildren(...ways(shelf.presets, each => "#preset-" + each.key));
  at("none").hidden = shelf.own.length > 0;
  at("unsaved").hidden = draft === null;
  if (draft) {
    const drop = button("Drop it", () => { draft = null; showShelf(); });
    at("unsaved").replaceChildren(html("span", {}, `Not saved yet: ${draft.drill.name || "a new drill"}`), html("a", { href: "#edit", class: "button" }, "Go on with it"), drop);
  }
}

function showOne(entry) {
  const own = entry.id !== undefined;
  at("one-name").textContent = entry.drill.name;
  at("one-by").textContent = own ? `Changed by ${entry.changed_by}, ${new Date(entry.changed_ms).toLocaleDateString(undefined, { dateStyle: "medium", timeZone: shelf.zone })}` : "Comes with the product";
  at("one-words").replaceChildren(...sentences(entry.drill).map(each => html("li", {}, each)));
  const file = html("a", { class: "button", href: own ? `/api/drills/${entry.id}/file` : `/api/presets/${entry.key}/file`, download: true }, "As a file");
  at("one-acts").replaceChildren(
    ...(own ? [button("Change", () => edit(entry.drill, entry), "main")] : []),
    button("Copy", () => edit({ ...entry.drill, name: copyOf(entry.drill.name) }, null), own ? "" : "main"), file,
    ...(own ? [button("Take off", () => takeOff(entry))] : []));
  oneTry.show(entry.drill);
  at("one-name").focus({ preventScroll: true });
}

function button(words, run, kind = "") {
  const made = html("button", { type: "button", class: kind, "data-right": "coach" }, words);
  made.addEventListener("click", run);
  return made;
}

function copyOf(name) {
  const taken = new Set(shelf.own.map(each => each.drill.name.toLowerCase()));
  for (let n = 1; ; n++) {
    const tried = Array.from(name).slice(0, 68).join("") + (n === 1 ? ", copy" : `, copy ${n}`);
    if (!taken.has(tried.toLowerCase())) return tried;
  }
}

function edit(drill, from) {
  draft = { drill: structuredClone(drill), good: drill.name.trim() !== "", from };
  at("edit-title").textContent = from ? "Change a drill" : "New drill";
  drawForm();
  if (draft.good) text.write(draft.drill).catch(() => {});
  else text.put("");
  said();
  location.hash = "edit";
  scrollTo(0, 0);
}

function drawForm() {
  draw(at("form"), draft.drill, drill => {
    draft.good = drill !== null;
    if (drill) {
      draft.drill = drill;
      text.write(drill).catch(error => { at("edit-wrong").textContent = error.message; draft.good = false; });
    }
    said();
  });
}

function said() {
  at("edit-words").replaceChildren(...(draft.good ? sentences(draft.drill).map(each => html("li", {}, each)) : []));
  at("edit-wrong").textContent = draft.good ? "" : draft.drill.name.trim() === "" ? "It needs a name." : "Something above or in the file is not right yet.";
  at("save").toggleAttribute("data-not-yet", !draft.good);
  if (draft.good) editTry.show(draft.drill);
}

async function save() {
  if (!draft.good) {
    at("form").reportValidity();
    return;
  }
  const { from, drill } = draft;
  const done = await trying(() => from ? send("PUT", "/api/drills/" + from.id, { drill, version: from.version }) : send("POST", "/api/drills", { drill }));
  if (!done) return;
  draft = null;
  location.hash = "own-" + done.id;
  tell("Saved.", "done", from ? { name: "Undo", run: () => trying(async () => {
    await send("PUT", "/api/drills/" + done.id, { drill: from.drill, version: done.version });
    await route();
  }) } : null);
}

async function takeOff(entry) {
  await trying(async () => {
    await send("DELETE", "/api/drills/" + entry.id, { version: entry.version });
    location.hash = "";
    tell(`${entry.drill.name} is off the shelf. What was played of it stays in the logbook.`, "done", { name: "Undo", run: () => trying(async () => {
      await send("POST", `/api/drills/${entry.id}/put-back`, {});
      await route();
    }) });
  });
}

async function readFile(file) {
  if (!file) return;
  if (file.size > 20_000) {
    tell("That is too long for a drill file.", "refused");
    return;
  }
  edit({ ...FIRST_DRAFT, name: file.name.replace(/\.toml$/i, "") }, null);
  at("text-part").open = true;
  text.put(await file.text());
  await text.read(tookText);
}

function tookText(drill) {
  if (!draft) return;
  draft.good = drill !== null;
  if (drill) {
    draft.drill = drill;
    drawForm();
  }
  said();
}

at("new").addEventListener("click", () => edit(FIRST_DRAFT, null));
at("import").addEventListener("click", () => at("file").click());
at("file").addEventListener("change", async () => {
  await trying(() => readFile(at("file").files[0]));
  at("file").value = "";
});
at("save").addEventListener("click", save);
at("drop").addEventListener("click", () => { draft = null; location.hash = ""; });
at("form").addEventListener("submit", event => { event.preventDefault(); save(); });
text.prepare(tookText);
addEventListener("hashchange", route);
addEventListener("beforeunload", event => draft && event.preventDefault());
nav("/drills", () => { if (!at("edit").hidden) { drawForm(); said(); } else route(); });
route();
