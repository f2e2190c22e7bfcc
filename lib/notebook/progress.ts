import { checksForShowing, escapeHtml, textOf } from "./_html.ts";

const check = checksForShowing("progress");

/** How a kernel is told to show or change something: its message, and what goes with it. */
export type Broadcast = (message: string, content: Record<string, unknown>) => Promise<void>;

/** Tells how many are done, of how many. */
export type Progress = (done: number, total: number) => Promise<void>;

/** Shortest time between two updates, for the reader's program and the wire [ms]. */
const PAUSE = 200;

let shown = 0;

/**
 * A line that counts along while a cell works, and stands at its last count afterwards. Outside a
 * notebook it says nothing.
 *
 * @param what What is counted, such as "panels tried".
 * @param broadcast How the kernel is told; that of the running notebook if left out.
 * @returns A function to call now and then; await its last call.
 * @throws {InputError} If `what` is not text or is blank, or a count is not 0 to the total.
 *
 * @example
 * ```ts
 * import { progress } from "@laminate/notebooks/notebook";
 * import { assertEquals } from "@std/assert";
 *
 * const seen: unknown[] = [];
 * const tell = progress("panels tried", (message) => Promise.resolve(void seen.push(message)));
 * await tell(0, 2);
 * await tell(2, 2);
 * assertEquals(seen, ["display_data", "update_display_data"]);
 * ```
 */
export function progress(what: string, broadcast: Broadcast = ofKernel): Progress {
  textOf(check, "what is counted", what);
  const id = `progress-${++shown}`;
  let last: Promise<void> | undefined;
  let at = 0;
  return (done: number, total: number): Promise<void> => {
    check.within("count", done, { min: 0, max: check.nonNegative("total", total) });
    const now = performance.now();
    if (last !== undefined && done < total && now - at < PAUSE) return last;
    at = now;
    const message = last === undefined ? "display_data" : "update_display_data";
    const text = `${done} of ${total} ${what}`;
    const content = {
      data: { "text/plain": text, "text/html": bar(text, done, total) },
      metadata: {},
      transient: { display_id: id },
    };
    // One after the other: an update that overtakes the line it changes is lost.
    last = (last ?? Promise.resolve()).then(() => broadcast(message, content));
    return last;
  };
}

function bar(text: string, done: number, total: number): string {
  const label = escapeHtml(text);
  return `<p class="progress"><progress value="${done}" max="${Math.max(1, total)}" ` +
    `aria-label="${label}"></progress> ${label}</p>`;
}

async function ofKernel(message: string, content: Record<string, unknown>): Promise<void> {
  let tell: typeof Deno.jupyter.broadcast;
  try {
    tell = Deno.jupyter.broadcast;
  } catch {
    // No kernel: a script or a test, or a page, where there is no Deno at all.
    return;
  }
  await tell(message, content);
}
