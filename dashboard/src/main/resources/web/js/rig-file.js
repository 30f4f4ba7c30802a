// What belongs into a lane's rig file: the lines that changed, or the whole file with them in it, to copy or to keep.

import { Refused, send } from "./api.js";

const at = id => document.getElementById(id);
let part = null;   // the lines that changed, as last told
let whole = null;  // the whole file that was made
let where = "";    // whom to ask for one
let name = "places.toml";

/** Takes the lines that changed, or null where there are none yet. @param path makes a whole file of one */
export function offer(text, path) {
  if (text !== part) { // other balls, or another beam was measured: a whole file made before is old
    part = text;
    whole = null;
  }
  where = path;
  show();
}

function show() {
  at("rig-part").hidden = part === null;
  name = whole === null ? "places.toml" : "rig.toml";
  put("file-do", part === null ? "Comes of step 3, once balls were rolled both ways."
    : whole === null ? "These lines change in the lane's rig file." : "This is the whole rig file with the new numbers.");
  put("file-more", part === null ? "Pins and polarity cannot be seen from here: a lane that has no rig file yet is led through by cupbeam commission on its computer."
    : whole === null ? "Give the file as it is, and the lines are put into it. It is sent to the studio computer and back, and kept nowhere."
      : "Comments of yours are not in it. Put it in the old one's place on the lane's computer, and start the lane again.");
  if (part !== null) put("rig-text", whole ?? part);
}

function put(id, words) { // what is said again is not read out again
  if (at(id).textContent !== words) at(id).textContent = words;
}

at("copy").addEventListener("click", async () => {
  getSelection().selectAllChildren(at("rig-text"));
  try {
    await navigator.clipboard.writeText(at("rig-text").textContent);
    put("file-more", "Copied.");
  } catch {
    put("file-more", "It is marked: copy it with the keyboard or by a long press.");
  }
});
at("download").addEventListener("click", () => {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([at("rig-text").textContent], { type: "application/toml" }));
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
});
at("whole-file").addEventListener("change", async () => {
  const file = at("whole-file").files[0];
  if (file && file.size <= 32_768) at("whole-text").value = await file.text();
  else if (file) put("file-do", "That is no rig file: it is longer than any.");
});
at("whole").addEventListener("submit", async event => {
  event.preventDefault();
  try {
    whole = (await send("POST", where, { text: at("whole-text").value })).text;
    show();
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    put("file-do", error.message);
  }
});
show();
