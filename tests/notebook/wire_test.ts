import { assert, assertEquals } from "@std/assert";
import { decodeMessage, encodeMessage, type Message } from "../../lib/notebook/runner/wire.ts";
import { connectSocket, type Frame } from "../../lib/notebook/runner/zmtp.ts";

const message: Message = {
  header: {
    msg_id: "1",
    msg_type: "execute_request",
    session: "s",
    username: "u",
    date: "2026-01-01T00:00:00.000Z",
    version: "5.3",
  },
  parent_header: {},
  metadata: {},
  content: { code: "ρ = 1" },
};
const text = (frame: Frame | undefined): string => new TextDecoder().decode(frame);
const bytes = (value: string): Frame => new TextEncoder().encode(value);

Deno.test("a message comes back, with identities before it and buffers behind it", () => {
  const frames = encodeMessage(message, "key");
  assertEquals(decodeMessage([bytes("id"), ...frames, bytes("buffer")], "key"), message);
});

Deno.test("the signature is HMAC-SHA256 over the four parts", () => {
  // RFC 4231 test case 2: key "Jefe", data "what do ya want for nothing?", split in four.
  const parts = ["what do ", "ya want ", "for ", "nothing?"].map(bytes);
  const wanted = "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843";
  const signed = [bytes("<IDS|MSG>"), bytes(wanted), ...parts];
  // The signature holds, so reading goes on to the JSON, which this is not.
  let reached = false;
  try {
    decodeMessage(signed, "Jefe");
  } catch (error) {
    reached = error instanceof SyntaxError;
  }
  assert(reached, "a right signature must be accepted");
  assertEquals(decodeMessage(signed, "Jeff"), undefined);
});

Deno.test("a message that was changed, or signed with another key, is dropped", () => {
  const frames = encodeMessage(message, "key");
  for (let i = 1; i < frames.length; i++) {
    const changed = frames.map((frame, j) =>
      j === i ? bytes(text(frame).replace(/.$/, "x")) : frame
    );
    assertEquals(decodeMessage(changed, "key"), undefined);
  }
  assertEquals(decodeMessage(frames, "other"), undefined);
  assertEquals(decodeMessage(frames.slice(0, 4), "key"), undefined);
  assertEquals(decodeMessage([bytes("nothing")], "key"), undefined);
});

/** A peer that sends these bytes in pieces of one size and keeps what it hears. */
async function withPeer(
  sent: Frame,
  piece: number,
  use: (port: number, heard: number[]) => Promise<void>,
): Promise<void> {
  const listener = Deno.listen({ hostname: "127.0.0.1", port: 0 });
  const heard: number[] = [];
  const serve = (async (): Promise<void> => {
    const connection = await listener.accept();
    const reading = (async (): Promise<void> => {
      for await (const chunk of connection.readable) heard.push(...chunk);
    })().catch(() => {});
    const writer = connection.writable.getWriter();
    for (let i = 0; i < sent.length; i += piece) await writer.write(sent.slice(i, i + piece));
    await reading;
  })();
  try {
    await use((listener.addr as Deno.NetAddr).port, heard);
  } finally {
    listener.close();
    await serve.catch(() => {});
  }
}

const hex = (value: string): number[] => value.match(/../g)!.map((pair) => parseInt(pair, 16));
// ZMTP 3.0 (RFC 23): signature, version 3.0, mechanism NULL, as-server 0, filler.
const GREETING = [...hex("ff00000000000000007f0300"), ...bytes("NULL"), ...Array(16 + 32).fill(0)];
// A READY command of a router, from the examples in RFC 23's grammar.
const READY = [
  ...hex("041c"),
  ...hex("055245414459"),
  11,
  ...bytes("Socket-Type"),
  0,
  0,
  0,
  6,
  ...bytes("ROUTER"),
];

Deno.test("frames are read whole, however the network cuts them; commands are passed over", async () => {
  const long = new Uint8Array(70_000).fill(7);
  const sent = Uint8Array.from([
    ...GREETING,
    ...READY,
    ...[1, 1, 65, 0, 2, 66, 67],
    ...[4, 5, 4, ...bytes("PING")],
    ...[2, 0, 0, 0, 0, 0, 1, 0x11, 0x70, ...long],
    ...[0, 0],
  ]);
  for (const piece of [1000, 7, 70_200]) {
    await withPeer(sent, piece, async (port, heard) => {
      const messages: (readonly Frame[])[] = [];
      let finished = (): void => {};
      const all = new Promise<void>((resolve) => finished = resolve);
      const socket = await connectSocket({
        port,
        type: "DEALER",
        onMessage: (frames) => {
          if (messages.push(frames) === 3) finished();
        },
      });
      await all;
      assertEquals(messages[0]?.map(text), ["A", "BC"]);
      assertEquals(messages[1]?.[0], long);
      assertEquals(messages[2]?.map(({ length }) => length), [0]);
      socket.send([bytes("x"), new Uint8Array(300)]);
      const wanted = [1, 1, 120, 2, 0, 0, 0, 0, 0, 0, 1, 44, ...Array(300).fill(0)];
      while (heard.length < 64 + 43 + wanted.length) await new Promise((r) => setTimeout(r, 5));
      assertEquals(heard.slice(0, 64), GREETING);
      assertEquals(heard.slice(-wanted.length), wanted);
      socket.close();
    });
  }
});

Deno.test("a peer that speaks something else is refused", async () => {
  await withPeer(bytes("HTTP/1.1 400 Bad Request\r\n".repeat(4)), 200, async (port) => {
    let refusal = "";
    await connectSocket({ port, type: "SUB", onMessage: () => {} })
      .catch((error) => refusal = String(error));
    assert(refusal.includes("does not speak ZMTP 3"), refusal);
  });
});
