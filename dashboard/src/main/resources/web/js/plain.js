// What comes from the host, before it is anything: names may hold signs that turn the direction of what is read after them,
// and a name is to turn no word but its own. They are left out; letters that run from right to left turn by themselves.

const TURNING = /[\u202a-\u202e\u2066-\u2069]/g;

/** What a text of JSON says. */
export function parsed(text) {
  return JSON.parse(text.replace(TURNING, ""));
}
