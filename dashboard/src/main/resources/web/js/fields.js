// Fields for a thumb: one of a few, and a number with a step.

import { html } from "./draw.js";

/**
 * One of a few, side by side.
 *
 * @param options [value, words] each; the value is text
 * @param changed called with the value
 */
export function choice(name, title, options, value, changed) {
  const field = html("fieldset", { class: "choice" }, html("legend", {}, title), html("div", {}, ...options.map(([each, words]) =>
    html("label", {}, html("input", { type: "radio", name, value: each, checked: each === value }), html("span", {}, words)))));
  field.addEventListener("change", event => changed(event.target.value));
  return field;
}

/** A whole number that two buttons step. */
export function stepper(title, { value, min, max }, changed) {
  const shown = html("output", { "aria-live": "polite" }, String(value));
  const step = (by, sign, words) => {
    const button = html("button", { type: "button", "aria-label": words }, sign);
    button.addEventListener("click", () => {
      value = Math.max(min, Math.min(max, value + by));
      shown.textContent = value;
      changed(value);
    });
    return button;
  };
  return html("div", { class: "field", role: "group", "aria-label": title }, html("span", { class: "label" }, title),
    html("div", { class: "stepper" }, step(-1, "\u2212", "Fewer"), shown, step(1, "+", "More")));
}
