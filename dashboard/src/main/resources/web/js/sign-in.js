// Signing in and out, and setting the PIN.

import { forgetSession, send, session, tell, trying } from "./api.js";

const at = id => document.getElementById(id);

/** Where to go on: to a page of this host, and to no other. */
function onward() {
  const to = new URL(new URLSearchParams(location.search).get("to") ?? "/control", location.origin);
  return to.origin === location.origin ? to.pathname + to.search + location.hash : "/control";
}

async function show() {
  const now = await session();
  at("enter").hidden = now.staff || !now.pin_set;
  at("renew").hidden = !now.staff;
  at("leave").hidden = !(now.staff && now.pin_set);
  at("now-field").hidden = !now.pin_set;
  at("now").required = now.pin_set;
  if (now.staff && now.pin_set) {
    says("Staff", "You are signed in as " + now.who + ".");
    words("Another PIN", "Change the PIN");
  } else if (now.staff) {
    says("Set a staff PIN", "Until there is one, the staff's pages open on this computer alone, for anybody who sits at it.");
    words("A PIN for the staff", "Set the PIN");
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

function words(title, button) {
  at("renew-title").textContent = title;
  at("renew-do").textContent = button;
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

onSubmit("enter", "enter-wrong", async () => {
  const who = at("who").value.trim();
  try {
    await send("POST", "/api/session", { pin: at("pin").value, who });
  } catch (error) {
    at("pin").select();
    throw error;
  }
  try {
    localStorage.setItem("who", who);
  } catch {
    // A browser that keeps nothing asks again next time.
  }
  location.replace(onward());
});

onSubmit("renew", "renew-wrong", async () => {
  if (at("next").value !== at("again").value) throw new Error("The two new ones are not the same.");
  await send("PUT", "/api/pin", { now: at("now").value, next: at("next").value });
  for (const id of ["now", "next", "again"]) at(id).value = "";
  forgetSession();
  tell("The PIN is set.");
  await show();
});

at("out").addEventListener("click", () => trying(async () => {
  await send("DELETE", "/api/session");
  forgetSession();
  await show();
}));

try {
  at("who").value = localStorage.getItem("who") ?? "";
} catch {
  // as above
}
document.documentElement.dataset.light = localStorage?.getItem("light") ?? "night";
show().catch(error => says("Staff", error.message));
