// Telling a lane what to do. Each thing asked has an id of its own: asked again under the same id, a lane does it once.

import { Refused, send, tell } from "./api.js";

let busy = false;

/** Whether something asked is still under way. */
export function waiting() {
  return busy;
}

function newId() {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), byte => byte.toString(16).padStart(2, "0")).join("");
}

/**
 * Asks a lane for something, and says what came of it.
 *
 * @param lane "studio/lane"
 * @param ask  the command's own keys; expect among them where the lane is to refuse once it has moved on
 * @param done what to say when it is done, and perhaps how to undo it: {words, undo}
 * @return whether the lane did it
 */
export async function order(lane, ask, done) {
  return give(lane, { id: newId(), ...ask }, done);
}

async function give(lane, command, done) {
  if (busy) return false;
  mark(true);
  try {
    const { sequence } = await send("POST", `/api/lanes/${lane}/commands`, command);
    if (done) tell(done.words, "done", done.undo ? { name: "Undo", run: () => done.undo(sequence) } : null);
    return true;
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    const unsure = error.status === 0 || error.status === 504;
    tell(error.message, "refused", unsure ? { name: "Ask again", run: () => give(lane, command, done) } : null);
    return false;
  } finally {
    mark(false);
  }
}

function mark(now) {
  busy = now;
  document.body.toggleAttribute("data-busy", now);
}

/** A button that asks back before it does what cannot be undone: a second touch within a few seconds does it. */
export function twice(button, question, run) {
  const label = button.querySelector("span") ?? button;
  let armed = null;
  let words = "";
  const calm = () => {
    if (armed) label.textContent = words;
    clearTimeout(armed);
    armed = null;
    button.removeAttribute("data-armed");
  };
  button.addEventListener("click", () => {
    if (armed) {
      calm();
      run();
      return;
    }
    words = label.textContent;
    label.textContent = question();
    button.setAttribute("data-armed", "");
    armed = setTimeout(calm, 4_000);
  });
  button.addEventListener("blur", calm);
  return calm;
}
