/** A worker of the batch engine. No module imports this: `_batch_workers.ts` starts it. */
import { takeChunks, type WorkOrder, type WorkReport } from "./_batch_chunks.ts";

// Outside a worker there is nobody to report to: a test run over all files loads this one too.
if (typeof self.postMessage === "function") {
  const report = (word: WorkReport): void => self.postMessage(word);
  self.addEventListener("message", (event: MessageEvent<WorkOrder>) => {
    takeChunks(event.data, report);
  });
  report("ready");
}
