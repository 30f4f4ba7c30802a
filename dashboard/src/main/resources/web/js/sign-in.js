// Signing in and out, by the PIN or by name and secret; setting the PIN, and one's own secret.

import { forgetSession, send, session, tell, trying } from "./api.js";

const at = id => document.getElementById(id);

/** Where to go on: to a page of this host, and to no other. */
function onward() {
  const to = new URL(new URLSearchParams(location.search).get("to") ?? "/control", location.origin);
  return to.origin === location.origin ? to.pathname + to.search + location.hash : "/control";
}

async function show() {
  const now = await session();
  at("enter").hidden = now.staff || now.by_name || !now.pin_set;
  at("named").hidden = now.staff || !now.by_name;
  at("renew").hidden = !now.staff;
  at("leave").hidden = !(now.staff && now.guarded);
  at("now-field").hidden = !now.by_name && !now.pin_set;
  at("now").required = now.by_name || now.pin_set;
  at("renew-user").value = now.by_name ? now.who : "staff";
  for (const id of ["next", "again"]) at(id).minLength = now.by_name ? 8 : 6;
  at("who-all").hidden = !(now.staff && now.may.includes("staff"));
  if (now.staff && now.by_name) {
    says("Staff", `You are signed in as ${now.who}, ${now.role === "owner" ? "an owner" : "a " + now.role}${now.studios ? " of " + now.studios.join(", ") : ""}.`);
    words("Another secret", "Change the secret", "The secret of now", "New secret", "At least 8 digits or letters. Your other browsers have to sign in again.");
  } else if (now.staff && now.pin_set) {
    says("Staff", "You are signed in as " + now.who + ".");
    words("Another PIN", "Change the PIN", "The PIN of now", "New PIN", "At least 6 digits or letters. Everybody else has to sign in again.");
  } else if (now.staff) {
    says("Set a staff PIN", "Until there is one, the staff's pages open on this computer alone, for anybody who sits at it.");
    words("A PIN for the staff", "Set the PIN", "The PIN of now", "New PIN", "At least 6 digits or letters. Everybody else has to sign in again.");
  } else if (now.by_name) {
    says("Staff sign-in", "");
    at(at("name").value ? "secret" : "name").focus();
  } else if (now.pin_set) {
    says("Staff sign-in", "");
    at("pin").focus();
  } else {
    says("Not yet", "No staff PIN is set. It is set on the studio computer itself, at this same page.");
  }
}

function says(title, text) {
  at("title").textContent = title;
  at("words").textContent = text;
}

function words(title, button, ofNow, ofNext, why) {
  at("renew-title").textContent = title;
  at("renew-do").textContent = button;
  at("now-of").textContent = ofNow;
  at("next-of").textContent = ofNext;
  at("next-why").textContent = why;
}

/** Does what a form asks for; what speaks against it is said beside its button. */
function onSubmit(form, wrong, act) {
  at(form).addEventListener("submit", async event => {
    event.preventDefault();
    const button = at(form).querySelector("button");
    if (button.disabled) return;
    button.disabled = true;
    button.setAttribute("aria-busy", "true");
    at(wrong).textContent = "";
    try {
      await act();
    } catch (error) {
      at(wrong).textContent = error.message;
    } finally {
      button.disabled = false;
      button.removeAttribute("aria-busy");
    }
  });
}

onSubmit("enter", "enter-wrong", () => enter({ pin: at("pin").value, who: at("who").value.trim() }, "pin", at("who").value.trim()));
onSubmit("named", "named-wrong", () => enter({ name: at("name").value.trim(), secret: at("secret").value }, "secret", at("name").value.trim()));

async function enter(body, secret, who) {
  try {
    await send("POST", "/api/session", body);
  } catch (error) {
    at(secret).select();
    throw error;
  }
  try {
    localStorage.setItem("who", who);
  } catch {
    // A browser that keeps nothing asks again next time.
  }
  location.replace(onward());
}

onSubmit("renew", "renew-wrong", async () => {
  if (at("next").value !== at("again").value) throw new Error("The two new ones are not the same.");
  const byName = (await session()).by_name;
  await send("PUT", byName ? "/api/session/secret" : "/api/pin", { now: at("now").value, next: at("next").value });
  for (const id of ["now", "next", "again"]) at(id).value = "";
  forgetSession();
  tell(byName ? "Your secret is another one now." : "The PIN is set.");
  await show();
});

at("out").addEventListener("click", () => trying(async () => {
  await send("DELETE", "/api/session");
  forgetSession();
  await show();
}));

try {
  at("who").value = at("name").value = localStorage.getItem("who") ?? "";
} catch {
  // as above
}
document.documentElement.dataset.light = localStorage?.getItem("light") ?? "night";
show().catch(error => says("Staff", error.message));
