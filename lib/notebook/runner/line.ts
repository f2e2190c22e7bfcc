import type { Connection } from "./connection.ts";
import { decodeMessage, encodeMessage, type Message } from "./wire.ts";
import { connectSocket, type Frame } from "./zmtp.ts";

/** The three lines to a kernel as one: requests, replies and outputs. */
export interface Line {
  /** Sends a request and returns its id. */
  send(channel: "shell" | "control", type: string, content: Record<string, unknown>): string;
  /** The reply to a request; asked for right after sending. */
  reply(id: string): Promise<Message>;
  /** From now on hands each output to this listener. */
  hear(listener: (message: Message) => void): void;
  /** Ends the connections. */
  close(): void;
}

/**
 * Connects to a kernel that is starting.
 *
 * @param connection Where it is going to listen.
 * @param keepTrying Asked after each refusal; false gives up.
 * @returns The line.
 */
export async function openLine(
  connection: Connection,
  keepTrying: () => boolean,
): Promise<Line> {
  const { key } = connection;
  const session = crypto.randomUUID();
  const waiting = new Map<string, (message: Message) => void>();
  let listener: (message: Message) => void = () => {};
  const reading = (take: (message: Message) => void) => (frames: readonly Frame[]): void => {
    const message = decodeMessage(frames, key);
    if (message !== undefined) take(message);
  };
  const answer = reading((message) => waiting.get(message.parent_header.msg_id ?? "")?.(message));
  const output = reading((message) => listener(message));
  const open = retried(keepTrying);
  const sockets = await Promise.all([
    open({ port: connection.shell_port, type: "DEALER", onMessage: answer }),
    open({ port: connection.control_port, type: "DEALER", onMessage: answer }),
    open({ port: connection.iopub_port, type: "SUB", onMessage: output }),
  ]);
  const [shell, control] = sockets;
  return {
    send(channel, type, content): string {
      const header = {
        msg_id: crypto.randomUUID(),
        msg_type: type,
        session,
        username: "notebooks",
        date: new Date().toISOString(),
        version: "5.3",
      };
      const frames = encodeMessage({ header, parent_header: {}, metadata: {}, content }, key);
      (channel === "shell" ? shell : control).send(frames);
      return header.msg_id;
    },
    reply: (id): Promise<Message> =>
      new Promise((resolve) =>
        waiting.set(id, (message) => {
          waiting.delete(id);
          resolve(message);
        })
      ),
    hear(to): void {
      listener = to;
    },
    close(): void {
      for (const socket of sockets) socket.close();
    },
  };
}

/** A kernel takes a moment until it listens, and refuses until then. */
function retried(keepTrying: () => boolean): typeof connectSocket {
  return async (options) => {
    while (true) {
      try {
        return await connectSocket(options);
      } catch (error) {
        if (!(error instanceof Deno.errors.ConnectionRefused) || !keepTrying()) throw error;
        await new Promise((resolve) => setTimeout(resolve, 10));
      }
    }
  };
}
