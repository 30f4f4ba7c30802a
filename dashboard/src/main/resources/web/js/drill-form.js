// A drill's terms as fields. Lengths are in the unit that the browser has chosen; one that is not touched stays what it
// was, to the tenth of a millimetre.

import { html } from "./draw.js";
import { choice } from "./fields.js";
import { usesFeet } from "./units.js";

const far = () => usesFeet() ? { mm: 304.8, name: "ft" } : { mm: 1000, name: "m" };
const near = () => usesFeet() ? { mm: 25.4, name: "in" } : { mm: 10, name: "cm" };

/** Draws the fields of a drill; changed is called with the drill as it has become, or null while the fields make none. */
export function draw(form, drill, changed) {
  const state = structuredClone(drill);
  state.overshoot ??= { penalty: "none" };
  state.duel ??= { turns: "station" };
  const marked = () => state.stations.at_mm !== undefined;
  const say = () => changed(form.checkValidity() && state.name.trim() ? structuredClone(state) : null);
  const again = () => { draw(form, state, changed); say(); };

  const name = html("input", { id: "f-name", maxlength: 80, required: true, autocomplete: "off" });
  name.value = state.name;
  name.addEventListener("input", () => { state.name = name.value; say(); });

  const stations = marked() ? places(state, say) : ladder(state, say);
  form.replaceChildren(
    field("f-name", "Name", name),
    choice("f-kind", "Stations", [["ladder", "evenly apart"], ["marked", "wherever I say"]], marked() ? "marked" : "ladder", kind => {
      state.stations = kind === "marked" ? { at_mm: spread(state.stations) } : evenly(state.stations.at_mm);
      again();
    }),
    html("div", { class: "trio" }, ...stations),
    choice("f-supply", "Balls", [["every-station", "as many at each station"], ["whole-run", "for the whole run"]], state.balls.supply, supply => { state.balls.supply = supply; say(); }),
    html("div", { class: "trio" },
      whole("f-balls", "How many balls", state.balls.count, 1, 100, n => { state.balls.count = n; form.querySelector("#f-holed").max = n; say(); }),
      whole("f-holed", "Holed to clear a station", state.advance.holed, 1, state.balls.count, n => { state.advance.holed = n; say(); })),
    choice("f-own", "A miss is too long", [["lane", "beyond the lane\u2019s own limit"], ["mine", "beyond a limit of its own"]], state.overshoot.limit_mm == null ? "lane" : "mine", whose => {
      if (whose === "lane") delete state.overshoot.limit_mm;
      else state.overshoot.limit_mm = 914.4;
      again();
    }),
    ...(state.overshoot.limit_mm == null ? [] : [html("div", { class: "trio" },
      span("f-limit", "Past the hole by", near(), state.overshoot.limit_mm, 0, 10_000, mm => { state.overshoot.limit_mm = mm; say(); }))]),
    choice("f-penalty", "One that is too long", [["none", "no penalty"], ["lose-ball", "costs another ball"], ["back-one", "leads a station back"], ["end-run", "ends the run"]],
      state.overshoot.penalty, penalty => { state.overshoot.penalty = penalty; say(); }),
    choice("f-turns", "Turns in a duel", [["station", "a stay at a station each"], ["ball", "a putt each"]], state.duel.turns, turns => { state.duel.turns = turns; say(); }));
}

function ladder(state, say) {
  const s = state.stations;
  return [span("f-first", "First at", far(), s.first_mm, 100, 50_000, mm => { s.first_mm = mm; say(); }),
    span("f-step", "Apart by", far(), s.step_mm, 0, 50_000, mm => { s.step_mm = mm; say(); }),
    whole("f-count", "How many", s.count, 1, 100, n => { s.count = n; say(); })];
}

function places(state, say) {
  const unit = far();
  const input = html("input", { id: "f-at", inputmode: "text", required: true, autocomplete: "off", "aria-describedby": "f-at-why" });
  input.value = state.stations.at_mm.map(mm => shown(mm, unit)).join("  ");
  input.addEventListener("input", () => {
    const words = input.value.trim().split(/[\s;]+/).filter(Boolean);
    const all = words.map(word => toMm(word.replace(/,$/, "").replace(",", "."), unit));
    const wrong = words.find((_, i) => !(all[i] >= 100 && all[i] <= 50_000));
    input.setCustomValidity(all.length === 0 ? "At least one station." : all.length > 100 ? "At most 100 stations."
      : wrong === undefined ? "" : `No station can stand at \u201c${wrong}\u201d: give ${shown(100, unit)} to ${shown(50_000, unit)} ${unit.name}.`);
    input.setAttribute("aria-invalid", String(!input.validity.valid));
    note.textContent = input.validationMessage || why;
    note.classList.toggle("wrong", !input.validity.valid);
    if (input.validity.valid) state.stations.at_mm = all;
    say();
  });
  const why = "One after another, in the order in which they are putted from, with spaces between.";
  const note = html("p", { class: "hint", id: "f-at-why" }, why);
  return [html("div", { class: "field whole" }, html("label", { for: "f-at" }, `Distances from the hole, in ${unit.name}`), input, note)];
}

function spread(stations) {
  return Array.from({ length: stations.count }, (_, i) => tenth(stations.first_mm + i * stations.step_mm));
}

function evenly(atMm) {
  const sorted = [...atMm].sort((a, b) => a - b);
  const step = sorted.length > 1 ? tenth((sorted[sorted.length - 1] - sorted[0]) / (sorted.length - 1)) : 914.4;
  return { first_mm: sorted[0], step_mm: step, count: sorted.length };
}

function field(id, words, ...inside) {
  return html("div", { class: "field" }, html("label", { for: id }, words), ...inside);
}

function whole(id, words, value, min, max, took) {
  return number(id, words, { value, min, max, step: 1 }, input => took(input.valueAsNumber));
}

function span(id, words, unit, mm, minMm, maxMm, took) {
  return number(id, `${words}, ${unit.name}`, { value: shown(mm, unit), min: shown(minMm, unit), max: shown(maxMm, unit), step: "any" },
    input => took(toMm(input.value, unit)));
}

function number(id, words, { value, ...range }, took) {
  const wrong = html("p", { class: "wrong", id: id + "-wrong" });
  const input = html("input", { id, type: "number", inputmode: "decimal", required: true, "aria-describedby": wrong.id, ...range });
  input.value = value;
  input.addEventListener("input", () => {
    wrong.textContent = input.validationMessage;
    input.setAttribute("aria-invalid", String(!input.validity.valid));
    took(input);
  });
  return field(id, words, input, wrong);
}

function shown(mm, unit) {
  return String(Math.round(mm / unit.mm * 1e4) / 1e4);
}

function toMm(text, unit) {
  return tenth(Number(text) * unit.mm);
}

function tenth(mm) {
  return Math.round(mm * 10) / 10;
}
