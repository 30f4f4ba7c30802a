// The lane's stream, kept up whatever happens to the host. The browser tries again by itself after a loss, but not
// after an answer that is no stream (a host that is just starting); then we do.

import { parsed } from "./plain.js";

const SILENCE_MS = 25_000;
const AGAIN_MS = 1_500;

/** @param on handlers by event name, given parsed JSON; and "there", given whether the host answers */
export function watch(path, on) {
  let source = null;
  let heard = 0;

  function connect() {
    source?.close();
    source = new EventSource(path);
    source.onopen = () => alive();
    source.onerror = () => {
      on.there(false);
      if (source.readyState === EventSource.CLOSED) setTimeout(connect, AGAIN_MS);
    };
    for (const name of Object.keys(on).filter(each => each !== "there")) {
      source.addEventListener(name, event => {
        alive();
        on[name](parsed(event.data));
      });
    }
  }

  function alive() {
    heard = Date.now();
    on.there(true);
  }

  setInterval(() => {
    if (Date.now() - heard > SILENCE_MS && source.readyState === EventSource.OPEN) {
      on.there(false);
      heard = Date.now();
      connect();
    }
  }, 5_000);
  addEventListener("pagehide", () => source.close());
  addEventListener("pageshow", event => event.persisted && connect());
  connect();
}
