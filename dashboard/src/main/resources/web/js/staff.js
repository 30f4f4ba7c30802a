// Who of the staff signs in by name, as what, and for which studios.

import { forgetSession, get, send, session, tell, trying } from "./api.js";
import { html } from "./draw.js";
import { choice } from "./fields.js";
import { nav } from "./nav.js";
import { twice } from "./orders.js";

const at = id => document.getElementById(id);
const ROLES = [["owner", "Owner"], ["coach", "Coach"], ["desk", "Desk"]];
let now = null;
let fresh = null;

async function load() {
  now = await trying(() => get("/api/staff"));
  if (!now) return;
  const nobody = now.people.length === 0;
  at("said").textContent = !nobody ? `${now.people.length === 1 ? "One signs in" : now.people.length + " sign in"} by name and secret; the PIN opens nothing.`
    : now.pin_set ? "Nobody has a name of their own yet: all sign in with the PIN, and may do everything. From the first one on the PIN opens nothing; the first is an owner of all studios, so make that you."
      : "Nobody has a name of their own yet. Set a staff PIN first, at the sign-in.";
  at("people").replaceChildren(...now.people.map(one));
  at("roles").replaceChildren(...now.roles.flatMap(each => [html("dt", {}, each.role[0].toUpperCase() + each.role.slice(1)),
    html("dd", {}, html("ul", {}, ...each.may.map(words => html("li", {}, words))))]));
  fresh = post(at("what"), "new", { role: nobody ? "owner" : "coach", studios: now.all ? null : now.studios }, nobody);
}

/** Role and studios, to choose. @return what is chosen, asked when it is sent */
function post(into, key, was, fixed = false) {
  const chosen = { role: was.role, all: was.studios == null, studios: new Set(was.studios ?? []) };
  const some = html("fieldset", { class: "choice", hidden: chosen.all }, html("legend", {}, "Which"), html("div", {}, ...now.studios.map(name => {
    const box = html("input", { type: "checkbox", checked: chosen.studios.has(name) });
    box.addEventListener("change", () => box.checked ? chosen.studios.add(name) : chosen.studios.delete(name));
    return html("label", {}, box, html("span", {}, name));
  })));
  const all = choice(key + "-all", "Studios", [["all", "All, also those to come"], ["some", "Some"]], chosen.all ? "all" : "some",
    value => { chosen.all = value === "all"; some.hidden = chosen.all; });
  into.replaceChildren(...(fixed ? [] : [choice(key + "-role", "Role", ROLES, was.role, value => { chosen.role = value; }),
    ...(now.all && now.studios.length > 0 ? [all] : []), some]));
  return () => ({ role: chosen.role, studios: chosen.all ? null : [...chosen.studios] });
}

function one(each) {
  const where = each.studios == null ? "all studios" : each.studios.join(", ");
  const item = html("li", { class: each.self ? "self" : null }, html("h2", {}, each.name),
    html("p", {}, `${each.role[0].toUpperCase() + each.role.slice(1)}, ${where}`),
    html("p", { class: "hint" }, each.signed_in === 0 ? "Not signed in here." : `Signed in with ${each.signed_in === 1 ? "one browser" : each.signed_in + " browsers"}, ${seen(each.seen_ago_s)}.`));
  if (!each.self) item.append(change(each), secret(each));
  if (!each.self || now.people.length === 1 && now.all) item.append(html("p", {}, away(each)));
  else item.append(html("p", { class: "hint" }, "This is you. Your secret is changed at the ", html("a", { href: "/sign-in" }, "sign-in"), "; what you are, by somebody else."));
  return item;
}

function seen(seconds) {
  return seconds < 120 ? "here now" : seconds < 7_200 ? `last ${Math.round(seconds / 60)} minutes ago` : `last ${Math.round(seconds / 3_600)} hours ago`;
}

function change(each) {
  const what = html("div", { class: "stack" });
  const asked = post(what, "of-" + each.id, each);
  const form = html("form", { class: "stack" }, what, html("p", { class: "hint" }, "They have to sign in again."), wrong(), html("p", {}, html("button", {}, "Change")));
  submit(form, () => send("PUT", "/api/staff/" + each.id, asked()), `${each.name} is changed.`);
  return html("details", {}, html("summary", {}, "Role and studios"), form);
}

function secret(each) {
  const field = html("input", { type: "password", minlength: 8, maxlength: 64, required: true, autocomplete: "new-password", "aria-label": "New secret of " + each.name });
  const form = html("form", { class: "stack" }, field, html("p", { class: "hint" }, "At least 8 digits or letters. They have to sign in again."), wrong(), html("p", {}, html("button", {}, "Set")));
  submit(form, () => send("PUT", `/api/staff/${each.id}/secret`, { secret: field.value }), `${each.name} has another secret.`);
  return html("details", {}, html("summary", {}, "New secret"), form);
}

/** The last one to go cannot undo it, and is asked. */
function away(each) {
  const button = html("button", { type: "button" }, html("span", {}, "Take away"));
  const last = now.people.length === 1 && now.all;
  const go = () => trying(async () => {
    await send("DELETE", "/api/staff/" + each.id);
    if (each.self) { location.assign("/sign-in"); return; }
    tell(`${each.name} signs in no more.`, "done", { name: "Undo", run: () => trying(async () => {
      await send("POST", `/api/staff/${each.id}/put-back`);
      tell(`${each.name} signs in again.`);
      await load();
    }) });
    await load();
  });
  if (last) twice(button, () => "Yes, and the PIN opens again", go);
  else button.addEventListener("click", go);
  return button;
}

function wrong() {
  return html("p", { class: "wrong", role: "alert" });
}

function submit(form, act, words) {
  form.addEventListener("submit", event => {
    event.preventDefault();
    const says = form.querySelector(".wrong");
    says.textContent = "";
    trying(async () => {
      try {
        await act();
      } catch (error) {
        if (error.status !== 400 && error.status !== 409) throw error;
        says.textContent = error.message;
        return;
      }
      tell(words);
      await load();
    });
  });
}

submit(at("new"), async () => {
  await send("POST", "/api/staff", { name: at("name").value.trim(), secret: at("secret").value, ...fresh() });
  for (const id of ["name", "secret"]) at(id).value = "";
  forgetSession(); // the first one goes on under the new name
  await session();
}, "Added.");
nav("/staff");
load();
