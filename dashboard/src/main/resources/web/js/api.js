// Asking the host, for pages of the staff. What is refused comes as an Error whose message is meant for people.

import { html } from "./draw.js";
import { lead } from "./focus.js";
import { parsed } from "./plain.js";

const AWAY = "The studio computer does not answer. Nothing was changed as far as this page knows.";
let standing = null;

/** Why something was refused, in words; status is HTTP's, 0 where nobody answered. */
export class Refused extends Error {
  constructor(status, words) {
    super(words);
    this.status = status;
  }
}

/** How this browser stands with the host: {staff, pin_set, guarded, by_name, who, token, role, may, studios}. Asked once a page. */
export function session() {
  standing ??= ask("GET", "/api/session");
  return standing;
}

export function forgetSession() {
  standing = null;
}

/** What a path gives. */
export function get(path) {
  return ask("GET", path);
}

/** Changes something. @param body is sent as JSON, where there is one */
export async function send(method, path, body) {
  try {
    return await ask(method, path, body, (await session()).token);
  } catch (error) {
    if (error.status !== 412) throw error;
    forgetSession(); // signed in anew in another window: the token is another one
    const now = await session();
    if (!now.token) throw error;
    return ask(method, path, body, now.token);
  }
}

async function ask(method, path, body, token) {
  const headers = { Accept: "application/json" };
  if (body !== undefined) headers["Content-Type"] = "application/json";
  if (token) headers["X-Cupbeam-Token"] = token;
  let answer;
  try {
    answer = await fetch(path, { method, headers, credentials: "same-origin", cache: "no-store",
      body: body === undefined ? undefined : JSON.stringify(body) });
  } catch {
    standing = path === "/api/session" ? null : standing;
    throw new Refused(0, AWAY);
  }
  if (answer.status === 401 && location.pathname !== "/sign-in") {
    location.assign("/sign-in?to=" + encodeURIComponent(location.pathname + location.search));
  }
  const said = await answer.text().then(parsed).catch(() => null);
  if (!answer.ok) throw new Refused(answer.status, said?.error ?? `The studio computer refused (${answer.status}).`);
  return said;
}

let telling = null;
let before = null;
const place = () => document.getElementById("told");
const isRead = () => Boolean(place()?.contains(document.activeElement));

/** Takes away what was said last; whoever was at it is led back to where they were when it was said. */
export function hush() {
  clearTimeout(telling);
  const read = isRead();
  place()?.replaceChildren();
  if (read && before) lead([before]);
}

/** The same after a while, but not under the finger of somebody who is at it. */
function hushAfter(ms) {
  telling = setTimeout(() => isRead() ? hushAfter(ms) : hush(), ms);
}

/**
 * Says something at the foot of the page, and to screen readers.
 *
 * @param kind "done" or "refused"; what was refused stays until it is put away
 * @param act  {name, run}: a button beside it, as for undoing
 */
export function tell(words, kind = "done", act = null) {
  const foot = place() ?? document.body.appendChild(
    html("div", { id: "told", role: "status", "aria-live": "polite" }));
  hush();
  before = document.activeElement;
  const shut = html("button", { type: "button", class: "shut", "aria-label": "Put away" }, "\u00d7");
  shut.addEventListener("click", hush);
  const box = html("p", { "data-kind": kind }, html("span", {}, words));
  if (act) {
    const button = html("button", { type: "button" }, act.name);
    button.addEventListener("click", () => { hush(); act.run(); });
    box.append(button);
  }
  box.append(shut);
  foot.replaceChildren(box);
  if (before !== document.body) before?.scrollIntoView({ block: "nearest" }); // from under what is said
  if (kind === "done") hushAfter(act ? 9_000 : 5_000);
}

/** Runs something that may be refused, and says so if it is. @return what it gave, or undefined */
export async function trying(something) {
  try {
    return await something();
  } catch (error) {
    if (!(error instanceof Refused)) console.error(error);
    tell(error.message, "refused");
    return undefined;
  }
}
