/** How the laminates of a batch are shared out: chunk after chunk, to whoever is free. */
import { runKernel } from "./_batch_kernel.ts";
import type { KernelInput, KernelOutput } from "./_batch_layout.ts";

/** Laminates in a chunk: about 8 ms of work at 8 plies, so that stopping is prompt. */
export const CHUNK = 16384;

/** Places in the shared counters. */
export const COUNTER = { next: 0, stop: 1, length: 2 } as const;

/** One batch for several workers; all arrays are in shared memory. */
export interface WorkOrder {
  readonly input: KernelInput;
  readonly output: KernelOutput;
  readonly count: number;
  /** The next laminate not taken, and whether to stop. */
  readonly counters: Int32Array;
}

/** A worker's word: it is up, that many more laminates are done, or it has found none left. */
export type WorkReport = "ready" | "finished" | { readonly done: number };

/** Takes chunks until none is left or it is told to stop, and reports each. */
export function takeChunks(
  { input, output, count, counters }: WorkOrder,
  report: (report: WorkReport) => void,
): void {
  while (Atomics.load(counters, COUNTER.stop) === 0) {
    const start = Atomics.add(counters, COUNTER.next, CHUNK);
    if (start >= count) break;
    const end = Math.min(start + CHUNK, count);
    runKernel(input, output, { start, end });
    report({ done: end - start });
  }
  report("finished");
}
