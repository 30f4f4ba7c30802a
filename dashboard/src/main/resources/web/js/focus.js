// The keyboard's place on a page whose parts come and go: it is never lost to the page's beginning.

// A browser does not show where the focus was put by a script, once what had it is gone; whoever uses keys sees it anyway.
for (const [kind, keys] of [["keydown", true], ["pointerdown", false]]) {
  addEventListener(kind, () => document.documentElement.toggleAttribute("data-keys", keys), true);
}

/**
 * Makes an element's children these, touching only what differs: what stays keeps the focus, and whatever it was about
 * to do.
 */
export function settle(into, children) {
  const wanted = new Set(children);
  for (const old of [...into.children]) {
    if (!wanted.has(old)) old.remove();
  }
  children.forEach((child, i) => {
    if (into.children[i] !== child) into.insertBefore(child, into.children[i] ?? null);
  });
}

/** Whether somebody could be at it: it is drawn, and not disabled. */
function usable(element) {
  return element.isConnected && !element.disabled && element.getClientRects().length > 0;
}

/**
 * Changes a page; whoever was at something that is gone or disabled after it is led to the first of these that is not.
 *
 * @param fallbacks elements, the nearest first
 */
export function without(change, fallbacks) {
  const held = document.activeElement;
  change();
  if (held && held !== document.body && !usable(held)) lead(fallbacks);
}

/** Puts the focus on the first of these that somebody could be at, without moving the page. */
export function lead(elements) {
  elements.find(usable)?.focus({ preventScroll: true });
}
