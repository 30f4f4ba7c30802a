// A coach's words on a player, a run or a putt: to read, to add, to withdraw.

import { send, tell, trying } from "./api.js";
import { html } from "./draw.js";
import { when } from "./logbook.js";

/**
 * Fills a section with notes and a form for one more.
 *
 * @param on      the path that a note is sent to
 * @param changed called when they have to be fetched again
 */
export function notes(into, all, { on, zone, title, changed }) {
  const id = into.id + "-words";
  const words = html("textarea", { id, maxlength: 2000, rows: 3, required: true });
  const form = html("form", { class: "stack" }, html("div", { class: "field" }, html("label", { for: id }, title), words),
    html("p", {}, html("button", {}, "Keep this note")));
  form.addEventListener("submit", event => {
    event.preventDefault();
    trying(async () => {
      await send("POST", on, { words: words.value });
      tell("The note is kept.");
      await changed();
    });
  });
  const shown = all.map(note => html("li", {}, html("p", { class: "words" }, note.words),
    html("p", { class: "quiet" }, `${note.author}, ${when(note.at_ms, zone)} `, withdraw(note, changed))));
  into.replaceChildren(...(shown.length ? [html("ul", { class: "notes" }, ...shown)] : []), form);
}

function withdraw(note, changed) {
  const button = html("button", { type: "button", class: "small" }, "Withdraw");
  button.setAttribute("aria-label", "Withdraw the note: " + note.words.slice(0, 60));
  button.addEventListener("click", () => trying(async () => {
    await send("DELETE", "/api/note/" + note.id);
    tell("The note is withdrawn.");
    await changed();
  }));
  return button;
}
