// Lengths in the unit that this browser has chosen: metric, or feet and inches.

const MM_PER_INCH = 25.4;
const MINUS = "\u2212";

let feet = false;

export function useFeet(wanted) {
  feet = wanted;
}

export function usesFeet() {
  return feet;
}

/** A length in parts, [number, unit] or [number, unit, number, unit], of how far something is, without a sign. */
export function parts(mm) {
  const size = Math.abs(mm);
  if (!feet) {
    return size < 995 ? [String(Math.round(size / 10)), "cm"] : [(size / 1000).toFixed(2), "m"];
  }
  const inches = Math.round(size / MM_PER_INCH);
  if (inches < 36) {
    return [String(inches), "in"];
  }
  const rest = inches % 12;
  return rest === 0 ? [String((inches - rest) / 12), "ft"] : [String((inches - rest) / 12), "ft", String(rest), "in"];
}

export function length(mm) {
  return parts(mm).join("\u00a0");
}

/** A small length, as an uncertainty is: to a tenth where that says something. */
export function small(mm) {
  const value = feet ? mm / MM_PER_INCH : mm / 10;
  const shown = value < 1.95 ? Math.max(0.1, value).toFixed(1) : String(Math.round(value));
  return shown + "\u00a0" + (feet ? "in" : "cm");
}

function mark(mm) {
  const inches = Math.round(Math.abs(mm) / MM_PER_INCH);
  return feet && inches % 12 === 0 ? inches / 12 + "\u00a0ft" : length(mm);
}

/** The marks of a ruler over so many millimetres: their step, and what each is called. */
export function ruler(spanMm, most) {
  const steps = feet ? [76.2, 152.4, 304.8, 609.6, 914.4, 1828.8, 3048] : [50, 100, 200, 250, 500, 1000, 2000, 5000];
  const step = steps.find(each => spanMm / each <= most) ?? steps[steps.length - 1];
  return { step, name: mm => Math.abs(mm) < 1 ? "0" : (mm < 0 ? MINUS : "") + mark(mm) };
}
