// Small helpers to build SVG and HTML without ever parsing text: names of players are hostile until shown.

const SVG = "http://www.w3.org/2000/svg";

export function svg(name, attributes = {}, ...children) {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) {
    element.setAttribute(key, typeof value === "number" ? String(Math.round(value * 100) / 100) : value);
  }
  element.append(...children);
  return element;
}

export function html(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === true) element.setAttribute(key, "");
    else if (value !== false && value != null) element.setAttribute(key, value);
  }
  element.append(...children);
  return element;
}

/** The sign of an outcome: a disc, a ring or an arrowhead, so that colour is not needed. */
export function mark(kind, title) {
  const shape = {
    in: () => svg("circle", { class: "in", cx: 10, cy: 10, r: 8.5 }),
    miss: () => svg("circle", { class: "miss", cx: 10, cy: 10, r: 7 }),
    past: () => svg("path", { class: "past", d: "M3 2 18 10 3 18Z" }),
    beam: () => svg("path", { class: "beam", d: "M10 1V19" }),
    "to-come": () => svg("circle", { class: "to-come", cx: 10, cy: 10, r: 7 }),
  }[kind]();
  const drawn = svg("svg", { class: "mark", viewBox: "0 0 20 20", ...(title ? { role: "img", "aria-label": title } : { "aria-hidden": "true" }) }, shape);
  return drawn;
}

export function kindOf(putt) {
  return putt.outcome === "holed" ? "in" : putt.overshoot ? "past" : "miss";
}

export const SAID = { in: "holed", miss: "missed", past: "past the limit" };
