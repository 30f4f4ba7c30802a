// What this browser has chosen: units and light. An address may choose too, for a wall screen that is set up once:
// ?units=feet&light=day

import { useFeet, usesFeet } from "./units.js";

const asked = new URLSearchParams(location.search);

function kept(key, fallback) {
  try {
    return asked.get(key) ?? localStorage.getItem(key) ?? fallback;
  } catch {
    return asked.get(key) ?? fallback;
  }
}

function keep(key, value) {
  try {
    localStorage.setItem(key, value);
  } catch {
    // A browser that keeps nothing: the choice holds until the page goes.
  }
}

/** Sets up the two switches; changed is called whenever lengths must be said anew. */
export function choices(unitsButton, lightButton, changed) {
  useFeet(kept("units", "metric") === "feet");
  document.documentElement.dataset.light = kept("light", "night");
  const say = () => {
    unitsButton.textContent = usesFeet() ? "Show metres" : "Show feet";
    lightButton.textContent = document.documentElement.dataset.light === "day" ? "Dark" : "Light";
  };
  unitsButton.addEventListener("click", () => {
    useFeet(!usesFeet());
    keep("units", usesFeet() ? "feet" : "metric");
    say();
    changed();
  });
  lightButton.addEventListener("click", () => {
    document.documentElement.dataset.light = document.documentElement.dataset.light === "day" ? "night" : "day";
    keep("light", document.documentElement.dataset.light);
    say();
  });
  say();
}
