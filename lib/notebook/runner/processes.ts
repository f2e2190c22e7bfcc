/** Kernels that run now, so that none outlives the program. */
const running = new Set<Deno.ChildProcess>();

/** Remembers a process that has to end with the program. */
export function keepProcess(child: Deno.ChildProcess): void {
  running.add(child);
}

/** Forgets a process that has ended. */
export function releaseProcess(child: Deno.ChildProcess): void {
  running.delete(child);
}

/** Ends every process that was kept. */
export function endProcesses(): void {
  for (const child of running) {
    try {
      child.kill("SIGKILL");
    } catch {
      // It has ended by itself.
    }
  }
  running.clear();
}

/** From here on Ctrl-C, a closed terminal or a plain kill ends the kernels too. */
export function endProcessesOnSignal(): void {
  const signals: readonly [Deno.Signal, number][] = Deno.build.os === "windows"
    ? [["SIGINT", 130], ["SIGBREAK", 149]]
    : [["SIGINT", 130], ["SIGTERM", 143], ["SIGHUP", 129]];
  for (const [signal, code] of signals) {
    Deno.addSignalListener(signal, () => {
      endProcesses();
      console.error(`\nStopped (${signal}). No kernel was left running.`);
      Deno.exit(code);
    });
  }
}
