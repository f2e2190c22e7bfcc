/**
 * The part of ZMTP 3.0 (https://rfc.zeromq.org/spec/23/) that a client of a kernel on this machine
 * needs: connect by TCP, no security mechanism, DEALER and SUB. The npm binding of libzmq loses
 * wake-ups and crashes under Deno 2.9 (tried with 6.8.0: one start in ten hung, three runs of
 * forty starts out of four ended in a segmentation fault), and it would need leave to run native
 * code.
 *
 * @module
 */

/** One frame of a message. */
export type Frame = Uint8Array<ArrayBuffer>;

/** A connection to one socket of a kernel. */
export interface Socket {
  /** Sends one message of several frames; messages leave in the order of the calls. */
  send(frames: readonly Frame[]): void;
  /** Ends the connection. */
  close(): void;
}

/** What to connect to. */
export interface SocketOptions {
  /** Port on this machine. */
  readonly port: number;
  /** Asks and is answered, or listens to all that is published. */
  readonly type: "DEALER" | "SUB";
  /** Takes each message that arrives. */
  readonly onMessage: (frames: readonly Frame[]) => void;
}

const MORE = 1;
const LONG = 2;
const COMMAND = 4;

/**
 * Connects to a socket of a kernel.
 *
 * @param options Port, kind and who takes the messages.
 * @returns The connection, ready to send.
 * @throws {Deno.errors.ConnectionRefused} If nobody listens there.
 */
export async function connectSocket({ port, type, onMessage }: SocketOptions): Promise<Socket> {
  const connection = await Deno.connect({ hostname: "127.0.0.1", port, transport: "tcp" });
  try {
    connection.setNoDelay(true);
    const writer = connection.writable.getWriter();
    const read = exactReader(connection.readable.getReader());
    // A failed write shows as the end of the reading side.
    const write = (bytes: Frame): void => void writer.write(bytes).catch(() => {});
    write(greeting());
    await checkGreeting(await read(64));
    write(encodeFrame(readyCommand(type), COMMAND));
    await readFrame(read);
    if (type === "SUB") write(encodeFrame(Uint8Array.of(1), 0));
    const close = (): void => {
      try {
        connection.close();
      } catch {
        // The other side was first.
      }
    };
    void receive(read, onMessage).catch(() => close());
    return {
      send(frames): void {
        write(joined(frames.map((f, i) => encodeFrame(f, i < frames.length - 1 ? MORE : 0))));
      },
      close,
    };
  } catch (error) {
    connection.close();
    throw error;
  }
}

/** Signature, version 3.0, mechanism NULL, client. */
function greeting(): Frame {
  const bytes = new Uint8Array(64);
  bytes[0] = 0xff;
  bytes[9] = 0x7f;
  bytes[10] = 3;
  bytes.set(new TextEncoder().encode("NULL"), 12);
  return bytes;
}

function checkGreeting(bytes: Frame): void {
  const mechanism = new TextDecoder().decode(bytes.subarray(12, 32)).replace(/\0+$/, "");
  if (bytes[0] !== 0xff || bytes[9] !== 0x7f || !(bytes[10]! >= 3) || mechanism !== "NULL") {
    throw new Error("what answers at the kernel's port does not speak ZMTP 3 without security");
  }
}

function readyCommand(type: string): Frame {
  return joined([
    shortText("READY"),
    shortText("Socket-Type"),
    longText(type),
    shortText("Identity"),
    longText(""),
  ]);
}

/** A name: its length in one byte, then the name. */
function shortText(text: string): Frame {
  const bytes = new TextEncoder().encode(text);
  return joined([Uint8Array.of(bytes.length), bytes]);
}

/** A value: its length in four bytes, then the value. */
function longText(text: string): Frame {
  const bytes = new TextEncoder().encode(text);
  return joined([Uint8Array.of(0, 0, 0, bytes.length), bytes]);
}

function encodeFrame(body: Frame, flags: number): Frame {
  if (body.length < 256) return joined([Uint8Array.of(flags, body.length), body]);
  const head = new Uint8Array(9);
  head[0] = flags | LONG;
  new DataView(head.buffer).setBigUint64(1, BigInt(body.length));
  return joined([head, body]);
}

type Read = (count: number) => Promise<Frame>;

async function readFrame(read: Read): Promise<{ flags: number; body: Frame }> {
  const flags = (await read(1))[0]!;
  const size = (flags & LONG) !== 0
    ? Number(new DataView((await read(8)).buffer).getBigUint64(0))
    : (await read(1))[0]!;
  return { flags, body: await read(size) };
}

async function receive(read: Read, onMessage: SocketOptions["onMessage"]): Promise<void> {
  let frames: Frame[] = [];
  while (true) {
    const { flags, body } = await readFrame(read);
    if ((flags & COMMAND) !== 0) continue;
    frames.push(body);
    if ((flags & MORE) !== 0) continue;
    onMessage(frames);
    frames = [];
  }
}

/** Reads exactly as many bytes as are asked for, in a buffer of their own. */
function exactReader(reader: ReadableStreamDefaultReader<Frame>): Read {
  let rest: Frame = new Uint8Array(0);
  return async (count): Promise<Frame> => {
    const wanted = new Uint8Array(count);
    let filled = 0;
    while (true) {
      const taken = rest.subarray(0, count - filled);
      wanted.set(taken, filled);
      filled += taken.length;
      rest = rest.subarray(taken.length);
      if (filled === count) return wanted;
      const { value, done } = await reader.read();
      if (done) throw new Error("the kernel closed the connection");
      rest = value;
    }
  };
}

function joined(parts: readonly Frame[]): Frame {
  const whole = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
