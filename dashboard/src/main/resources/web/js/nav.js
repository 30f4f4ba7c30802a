// The way round the staff's pages: at the thumb on a phone, along the top on anything wide. A page has
// <header id="nav"></header> first in its body, and calls nav(its own path).

import { forgetSession, send, session, trying } from "./api.js";
import { choices } from "./choice.js";
import { html, svg } from "./draw.js";

const FIRST = [
  ["/control", "Control", "M4 6h16M4 12h16M4 18h16M9 3.5v5M16 9.5v5M7 15.5v5"],
  ["/drills", "Drills", "M5 20V15h5V10h5V5h5"],
  ["/players", "Players", "M12 11a3.6 3.6 0 1 0 0-7.2A3.6 3.6 0 0 0 12 11ZM4.5 20.5c.6-4 3.6-6 7.5-6s6.9 2 7.5 6"],
  ["/runs", "Logbook", "M6 3.5h12v17H6zM9.5 8h5M9.5 12h5M9.5 16h3"],
];
const MORE = [["/insight", "Insight"], ["/leagues", "Leagues"], ["/lanes", "Lanes"], ["/green", "Greens"], ["/usage", "Usage"], ["/health", "Health"], ["/staff", "Staff"]];
/** What a page is for, where not everybody may see it; the words are those of the host's rights. */
const FOR = { "/insight": "coach", "/leagues": "coach", "/usage": "usage", "/staff": "staff" };

/**
 * Builds it.
 *
 * @param here    the path, as in the lists above, that this page belongs to
 * @param changed called when lengths must be said anew
 */
export function nav(here, changed = () => {}) {
  const units = html("button", { type: "button" });
  const light = html("button", { type: "button" });
  const account = html("div", { class: "account" });
  const panel = html("div", { class: "more", id: "more", hidden: true },
    html("ul", {}, ...MORE.map(([path, name]) => html("li", {}, way(path, name, here)))),
    html("div", { class: "switches" }, units, light), account);
  const opener = html("button", { type: "button", class: "opener", "aria-expanded": "false", "aria-controls": "more" },
    drawn("M5 12h.01M12 12h.01M19 12h.01", 3.2), html("span", {}, "More"));
  const open = wanted => {
    panel.hidden = !wanted;
    opener.setAttribute("aria-expanded", String(wanted));
  };
  opener.addEventListener("click", () => open(panel.hidden));
  document.addEventListener("keydown", event => {
    if (event.key === "Escape" && !panel.hidden) { open(false); opener.focus(); }
  });
  document.addEventListener("click", event => {
    if (!panel.hidden && !event.target.closest("#nav")) open(false);
  });
  document.getElementById("nav").replaceChildren(
    html("a", { class: "skip", href: "#main" }, "Skip to the page itself"),
    html("nav", { "aria-label": "Staff pages" },
      html("ul", {}, ...FIRST.map(([path, name, icon]) => html("li", {}, way(path, name, here, icon)))), opener, panel));
  choices(units, light, changed);
  session().then(now => {
    if (now.may) document.documentElement.dataset.may = now.may.join(" "); // what is for others goes, see staff.css
    showAccount(account, now);
  }, () => {});
}

function way(path, name, here, icon) {
  return html("a", { href: path, "data-right": FOR[path] ?? null, "aria-current": path === here ? "page" : null }, ...(icon ? [drawn(icon, 1.8)] : []),
    html("span", {}, name));
}

function drawn(path, width) {
  return svg("svg", { viewBox: "0 0 24 24", "aria-hidden": "true", fill: "none", stroke: "currentColor",
    "stroke-width": width, "stroke-linecap": "round", "stroke-linejoin": "round" }, svg("path", { d: path }));
}

function showAccount(into, now) {
  if (!now.guarded) {
    document.getElementById("nav").append(html("p", { class: "no-pin" }, "No staff PIN is set: these pages open on this computer alone. ",
      html("a", { href: "/sign-in" }, "Set a PIN")));
    return;
  }
  const out = html("button", { type: "button" }, "Sign out");
  out.addEventListener("click", () => trying(async () => {
    await send("DELETE", "/api/session");
    forgetSession();
    location.assign("/lanes");
  }));
  into.replaceChildren(html("span", {}, "Signed in as ", html("b", {}, now.who ?? "staff")), html("a", { href: "/sign-in" }, now.by_name ? "Secret" : "PIN"), out);
}
