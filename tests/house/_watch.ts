/**
 * Runs beside an attack, in a thread of its own: a call that never comes back is told by name, and
 * the run ended.
 *
 * @module
 */
/// <reference lib="deno.worker" />

/** Longest without a word [s]. */
const PATIENCE = 30;

self.onmessage = ({ data }: MessageEvent<SharedArrayBuffer>): void => {
  const beat = new Int32Array(data, 0, 2);
  let last = -1;
  let silent = 0;
  setInterval(() => {
    const now = Atomics.load(beat, 0);
    silent = now === last ? silent + 1 : 0;
    last = now;
    if (silent < PATIENCE) return;
    const text = new Uint8Array(data, 8).slice(0, Atomics.load(beat, 1));
    // Not by the console, which a quiet test keeps to itself.
    Deno.stderr.writeSync(new TextEncoder().encode("\nHANGS: "));
    Deno.stderr.writeSync(text);
    Deno.kill(Deno.pid, "SIGKILL");
  }, 1000);
};
