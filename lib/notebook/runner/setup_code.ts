/** Kind of the message by which the kernel says that all outputs of a cell are out. */
export const FENCE = "laminate_fence";

/**
 * Runs silently before the first cell.
 *
 * An error thrown in a timer wedges the Deno kernel for good unless somebody listens; so we listen,
 * and hand the error over with the next fence. The watch ends the kernel if its runner is gone,
 * however it went. A notebook reads records and shows them: it needs to run, send or write nothing.
 */
export function setupCode(runnerPid: number): string {
  return `await (async () => {
    const uncaught = [];
    const keep = (error) => uncaught.push(error?.stack ? String(error.stack) : String(error));
    addEventListener("error", (e) => { e.preventDefault(); keep(e.error ?? e.message); });
    addEventListener("unhandledrejection", (e) => { e.preventDefault(); keep(e.reason); });
    const broadcast = Deno.jupyter.broadcast;
    globalThis[Symbol.for("laminate.fence")] = (number) =>
      broadcast("${FENCE}", { number, uncaught: uncaught.splice(0) });
    const exit = Deno.exit;
    setInterval(() => { if (Deno.ppid !== ${runnerPid}) exit(1); }, 500);
    for (const name of ["run", "ffi", "write", "net"]) await Deno.permissions.revoke({ name });
  })();`;
}

/** Runs silently after each cell; the queue is first in, first out, so outputs come before it. */
export function fenceCode(number: number): string {
  return `await globalThis[Symbol.for("laminate.fence")](${number});`;
}
