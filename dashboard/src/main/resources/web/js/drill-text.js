// A drill as the text of a file, with what is wrong in it beside its lines.

import { send } from "./api.js";
import { html } from "./draw.js";

const at = id => document.getElementById(id);
let asked = 0;
let soon = null;

/** @param took called with a drill when the text is one, and with null when it is none */
export function prepare(took) {
  at("text").addEventListener("input", () => {
    lines([]);
    clearTimeout(soon);
    soon = setTimeout(() => read(took), 350);
  });
}

/** Reads what is written there. */
export async function read(took) {
  const mine = ++asked;
  try {
    const { drill, faults } = await send("POST", "/api/drill-text/read", { text: at("text").value });
    if (mine !== asked) return;
    show(faults);
    took(drill);
  } catch (error) {
    at("faults").replaceChildren(html("li", {}, error.message));
  }
}

/** Writes a drill there. */
export async function write(drill) {
  const mine = ++asked;
  const { text } = await send("POST", "/api/drill-text/write", { drill });
  if (mine === asked) put(text);
}

export function put(text) {
  at("text").value = text;
  at("faults").replaceChildren();
  lines([]);
}

function show(faults) {
  lines(faults);
  at("text").setAttribute("aria-invalid", String(faults.length > 0));
  at("faults").replaceChildren(...faults.map(fault => {
    const words = html("span", {}, ...(fault.key ? [html("code", {}, fault.key), " "] : []), fault.wrong + (fault.remedy ? ". " + fault.remedy.charAt(0).toUpperCase() + fault.remedy.slice(1) : "") + ".");
    if (!fault.line) return html("li", {}, words);
    const go = html("button", { type: "button" }, "Line " + fault.line);
    go.addEventListener("click", () => select(fault.line));
    return html("li", {}, go, words);
  }));
}

function lines(faults) {
  const count = at("text").value.split("\n").length;
  at("text").rows = Math.max(8, count + 1);
  const wrong = new Set(faults.map(fault => fault.line));
  at("lines").replaceChildren(...Array.from({ length: count }, (_, i) => html("li", { "data-wrong": wrong.has(i + 1) }, String(i + 1))));
}

function select(line) {
  const before = at("text").value.split("\n").slice(0, line - 1).join("\n").length + (line > 1 ? 1 : 0);
  const long = at("text").value.split("\n")[line - 1].length;
  at("text").focus();
  at("text").setSelectionRange(before, before + long);
}
