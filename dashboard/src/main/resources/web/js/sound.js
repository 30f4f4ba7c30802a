// A tone for what became of a putt, where somebody has asked for it. Made here, of a few sine waves: holed rises, missed
// is one low knock, past the limit falls; told apart by shape, so that pitch alone need not be known.

const NOTES = {
  in: [[523.25, 0, 0.5], [783.99, 0.13, 0.7]],
  miss: [[220, 0, 0.28]],
  past: [[392, 0, 0.3], [293.66, 0.16, 0.3], [196, 0.32, 0.55]],
};
const LOUD = 0.22;

let wanted = false;
let audio = null;

function kept() {
  try {
    return (new URLSearchParams(location.search).get("sound") ?? localStorage.getItem("sound")) === "on";
  } catch {
    return new URLSearchParams(location.search).get("sound") === "on";
  }
}

function keep() {
  try {
    localStorage.setItem("sound", wanted ? "on" : "off");
  } catch {
    // A browser that keeps nothing: the choice holds until the page goes.
  }
}

/** Sets up the button that turns tones on and off. They are off until somebody wants them. */
export function sound(button) {
  const say = () => { button.textContent = wanted ? "Mute" : "Sound"; };
  wanted = kept();
  button.addEventListener("click", () => {
    wanted = !wanted;
    keep();
    say();
    if (wanted) tone("in");
  });
  // A browser lets a page sound only once somebody has touched it, unless the wall screen's was started otherwise.
  for (const gesture of ["pointerdown", "keydown"]) addEventListener(gesture, () => wanted && ready()?.resume(), { passive: true });
  if (wanted) ready();
  say();
}

function ready() {
  audio ??= globalThis.AudioContext ? new AudioContext() : null;
  return audio;
}

/** @param kind as of the marks: in, miss or past */
export function tone(kind) {
  const to = wanted ? ready() : null;
  if (!to) return;
  to.resume?.();
  for (const [hertz, after, lasts] of NOTES[kind]) {
    const at = to.currentTime + after;
    const wave = to.createOscillator();
    const level = to.createGain();
    wave.frequency.value = hertz;
    level.gain.setValueAtTime(0, at);
    level.gain.linearRampToValueAtTime(LOUD, at + 0.012);
    level.gain.exponentialRampToValueAtTime(0.001, at + lasts);
    wave.connect(level).connect(to.destination);
    wave.start(at);
    wave.stop(at + lasts + 0.05);
  }
}
