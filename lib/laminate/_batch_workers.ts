/** Workers of the batch engine: starting them, and running one batch on them. */
import { COUNTER, type WorkOrder, type WorkReport } from "./_batch_chunks.ts";
import type { BatchResult } from "./batch.ts";
import { makeOutput, type PreparedBatch } from "./_batch.ts";

/** Called as laminates are done; throws to stop. */
export type Report = (done: number) => void;

/** Starts up to that many workers; fewer or none where workers or shared memory are not to be had. */
export async function startWorkers(threads: number): Promise<Worker[]> {
  if (typeof Worker === "undefined" || typeof SharedArrayBuffer === "undefined") return [];
  const started = await Promise.all(Array.from({ length: threads }, startWorker));
  return started.filter((worker) => worker !== undefined);
}

/** A worker that has said it is up; none if it may not be started or its module not be read. */
function startWorker(): Promise<Worker | undefined> {
  return new Promise((resolve) => {
    try {
      const url = new URL("./_batch_worker.ts", import.meta.url);
      const worker = new Worker(url, { type: "module" });
      worker.addEventListener("message", () => resolve(worker), { once: true });
      worker.addEventListener("error", (event) => {
        // Handled: the batch runs on the threads that there are.
        event.preventDefault();
        worker.terminate();
        resolve(undefined);
      }, { once: true });
    } catch {
      resolve(undefined);
    }
  });
}

/** Runs a batch on workers that are up and idle. */
export async function runOnWorkers(
  workers: readonly Worker[],
  prepared: PreparedBatch,
  report: Report,
): Promise<BatchResult> {
  const output = makeOutput(prepared, (bytes) => new SharedArrayBuffer(bytes));
  const { lamina, thickness, angleDeg, loads } = prepared.input;
  const order: WorkOrder = {
    input: {
      ...prepared.input,
      lamina: inSharedMemory(lamina),
      thickness: inSharedMemory(thickness),
      angleDeg: inSharedMemory(angleDeg),
      loads: inSharedMemory(loads),
    },
    output,
    count: prepared.count,
    counters: new Int32Array(new SharedArrayBuffer(4 * COUNTER.length)),
  };
  // All are awaited even if one fails, so that none still writes when the caller reads.
  const ends = await Promise.allSettled(workers.map((worker) => runOn(worker, order, report)));
  for (const end of ends) if (end.status === "rejected") throw end.reason;
  return output;
}

function runOn(worker: Worker, order: WorkOrder, report: Report): Promise<void> {
  return new Promise((resolve, reject) => {
    const listening = new AbortController();
    let failure: { readonly reason: unknown } | undefined;
    worker.addEventListener("message", ({ data }: MessageEvent<WorkReport>) => {
      if (typeof data === "object") {
        try {
          report(data.done);
        } catch (reason) {
          failure = { reason };
          Atomics.store(order.counters, COUNTER.stop, 1);
        }
      } else if (data === "finished") {
        listening.abort();
        if (failure === undefined) resolve();
        else reject(failure.reason);
      }
    }, { signal: listening.signal });
    // Nothing in the kernel throws; a worker that ends otherwise must not leave its caller waiting.
    worker.addEventListener("error", (event) => {
      event.preventDefault();
      listening.abort();
      Atomics.store(order.counters, COUNTER.stop, 1);
      reject(new Error(`A worker of the batch ended early: ${event.message}`));
    }, { signal: listening.signal });
    worker.postMessage(order);
  });
}

/** The array itself if its memory is shared already, else a copy that is. */
function inSharedMemory<T extends Float64Array | Uint16Array>(array: T): T {
  if (array.buffer instanceof SharedArrayBuffer) return array;
  const Kind = array.constructor as new (buffer: ArrayBufferLike) => T;
  const copy = new Kind(new SharedArrayBuffer(array.byteLength));
  copy.set(array);
  return copy;
}
