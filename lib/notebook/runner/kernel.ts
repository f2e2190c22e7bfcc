import { connectionFile, writeConnection } from "./connection.ts";
import { type Line, openLine } from "./line.ts";
import type { Message } from "./wire.ts";
import { FENCE, fenceCode, setupCode } from "./setup_code.ts";
import { keepProcess, releaseProcess } from "./processes.ts";

/** How a kernel is started. */
export interface KernelOptions {
  /** The folder it works in, as Jupyter starts it: the notebook's. */
  readonly folder: string;
  /** Longest time to wait for it to answer [ms]. */
  readonly startLimit?: number;
}

/** How a cell ended. */
export type CellEnd =
  | { readonly how: "done" }
  | { readonly how: "error"; readonly name: string; readonly text: string; readonly trace: string }
  | { readonly how: "time limit" }
  | { readonly how: "kernel ended"; readonly code: number; readonly stderr: string };

/** What a cell sent and how it ended. */
export interface CellRun {
  /** What it sent, in order. */
  readonly messages: readonly Message[];
  /** How it ended. */
  readonly end: CellEnd;
}

/** A running kernel. */
export interface Kernel {
  /** Runs a cell to its end, its late outputs included. */
  execute(code: string, timeLimit: number): Promise<CellRun>;
  /** Ends the kernel; nothing of it stays behind. */
  stop(): Promise<void>;
  /** Id of its process. */
  readonly pid: number;
}

/** Starts a Deno kernel and waits until its outputs can be heard. */
export async function startKernel(
  { folder, startLimit = 60_000 }: KernelOptions,
): Promise<Kernel> {
  const { connection, folder: ownFolder } = await writeConnection();
  const child = new Deno.Command(Deno.execPath(), {
    args: ["jupyter", "--kernel", "--conn", connectionFile(ownFolder)],
    cwd: folder,
    // Colour codes would end in the notebook's text.
    env: { NO_COLOR: "1" },
    stdin: "null",
    stdout: "null",
    stderr: "piped",
  }).spawn();
  keepProcess(child);
  const stderr = lastOf(child.stderr);
  const deadline = performance.now() + startLimit;
  let ended = false;
  void child.status.then(() => ended = true);
  const inTime = (): boolean => !ended && performance.now() < deadline;
  let line: Line | undefined;
  const stop = async (): Promise<void> => {
    await endProcess(child, line);
    line?.close();
    releaseProcess(child);
    await stderr;
    // A kernel that never answered still has it.
    await Deno.remove(ownFolder, { recursive: true }).catch(() => {});
  };
  try {
    line = await openLine(connection, inTime);
    await hearOutputs(line, inTime);
    // It has read its file; gone now, the file is not left behind however the run ends.
    await Deno.remove(ownFolder, { recursive: true });
    const kernel = { pid: child.pid, stop, execute: executor(line, child, stderr) };
    const { end } = await kernel.execute(setupCode(Deno.pid), startLimit);
    if (end.how !== "done") throw new Error(`it refused its setup: ${Deno.inspect(end)}`);
    return kernel;
  } catch (error) {
    await stop();
    const reason = error instanceof Error ? error.message : String(error);
    throw new Error(`the Deno kernel did not start: ${reason}\n${await stderr}`.trimEnd());
  }
}

/** A subscriber misses what was sent before it joined, so we ask until something is heard. */
async function hearOutputs(line: Line, inTime: () => boolean): Promise<void> {
  let heard = false;
  line.hear(() => heard = true);
  while (!heard) {
    if (!inTime()) throw new Error("it does not answer");
    line.send("shell", "kernel_info_request", {});
    for (let i = 0; i < 10 && !heard && inTime(); i++) await pause(10);
  }
}

function executor(
  line: Line,
  child: Deno.ChildProcess,
  stderr: Promise<string>,
): Kernel["execute"] {
  let fence = 0;
  return async (code, timeLimit): Promise<CellRun> => {
    const messages: Message[] = [];
    const number = ++fence;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const silent = { silent: true, store_history: false, allow_stdin: false, stop_on_error: false };
    const run = async (): Promise<CellEnd> => {
      const fenced = new Promise<readonly string[]>((resolve) =>
        line.hear((message) => {
          const { header: { msg_type: type }, content } = message;
          if (type === FENCE) {
            if (content.number === number) resolve(content.uncaught as string[]);
          } else if (type !== "status" && type !== "execute_input") messages.push(message);
        })
      );
      const setup = number === 1;
      const id = line.send("shell", "execute_request", {
        code,
        ...(setup ? silent : { ...silent, silent: false, store_history: true }),
      });
      const reply = await line.reply(id);
      line.send("shell", "execute_request", { code: fenceCode(number), ...silent });
      return endOf(reply, messages, await fenced);
    };
    const late = new Promise<CellEnd>((resolve) => {
      timer = setTimeout(() => resolve({ how: "time limit" }), timeLimit);
    });
    const died = child.status.then(async ({ code }): Promise<CellEnd> => ({
      how: "kernel ended",
      code,
      stderr: await stderr,
    }));
    const end = await Promise.race([run(), late, died]);
    clearTimeout(timer);
    return { messages, end };
  };
}

function endOf(
  { content }: Message,
  messages: readonly Message[],
  uncaught: readonly string[],
): CellEnd {
  if (content.status !== "ok") {
    const sent = messages.find(({ header }) => header.msg_type === "error")?.content ?? content;
    return {
      how: "error",
      name: String(sent.ename ?? "Error"),
      text: String(sent.evalue ?? ""),
      trace: ((sent.traceback ?? []) as string[]).join("\n"),
    };
  }
  if (uncaught.length === 0) return { how: "done" };
  return {
    how: "error",
    name: "Uncaught",
    text: "an error was thrown where nothing awaited it",
    trace: uncaught.join("\n"),
  };
}

/** Asks the kernel to go, and ends it if it does not go at once. */
async function endProcess(child: Deno.ChildProcess, line: Line | undefined): Promise<void> {
  line?.send("control", "shutdown_request", { restart: false });
  const gone = await Promise.race([
    child.status.then(() => true),
    pause(line === undefined ? 0 : 1000).then(() => false),
  ]);
  if (!gone) {
    try {
      child.kill("SIGKILL");
    } catch {
      // It went between the two.
    }
  }
  await child.status;
}

/** The last part of what a process writes; all of it is read, so that the pipe never fills. */
async function lastOf(stream: ReadableStream<Uint8Array>): Promise<string> {
  const decoder = new TextDecoder();
  let text = "";
  for await (const chunk of stream) {
    text = (text + decoder.decode(chunk, { stream: true })).slice(-4000);
  }
  return text;
}

function pause(milliseconds: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, milliseconds));
}
