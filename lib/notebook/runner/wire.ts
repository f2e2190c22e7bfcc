import { createHmac, timingSafeEqual } from "node:crypto";
import type { Frame } from "./zmtp.ts";

/** A message of the Jupyter protocol (version 5), without its binary buffers. */
export interface Message {
  /** Who sent it, and what kind it is. */
  readonly header: MessageHeader;
  /** The header of the request it answers; empty if there is none. */
  readonly parent_header: Partial<MessageHeader>;
  /** Fields outside the content. */
  readonly metadata: Readonly<Record<string, unknown>>;
  /** The message itself; its fields depend on the kind. */
  readonly content: Readonly<Record<string, unknown>>;
}

/** The header of a message. */
export interface MessageHeader {
  /** Its own id. */
  readonly msg_id: string;
  /** Its kind, such as `execute_request`. */
  readonly msg_type: string;
  /** The client's session. */
  readonly session: string;
  /** The user; not used. */
  readonly username: string;
  /** When it was sent. */
  readonly date: string;
  /** Version of the protocol. */
  readonly version: string;
}

const DELIMITER = "<IDS|MSG>";
const encoder = new TextEncoder();
const decoder = new TextDecoder();

/** The frames that go on the wire: delimiter, signature, then the four parts as JSON. */
export function encodeMessage(message: Message, key: string): Frame[] {
  const parts = [message.header, message.parent_header, message.metadata, message.content]
    .map((part) => encoder.encode(JSON.stringify(part)));
  return [encoder.encode(DELIMITER), encoder.encode(signatureOf(parts, key)), ...parts];
}

/** The message in the frames, or undefined if they are not one that was signed with the key. */
export function decodeMessage(frames: readonly Frame[], key: string): Message | undefined {
  const start = frames.findIndex((frame) => decoder.decode(frame) === DELIMITER);
  if (start < 0) return undefined;
  const [signature, ...rest] = frames.slice(start + 1, start + 6);
  if (signature === undefined || rest.length < 4) return undefined;
  const wanted = encoder.encode(signatureOf(rest, key));
  if (signature.length !== wanted.length || !timingSafeEqual(signature, wanted)) return undefined;
  const [header, parent, metadata, content] = rest.map((frame) =>
    JSON.parse(decoder.decode(frame))
  );
  return { header, parent_header: parent ?? {}, metadata, content };
}

function signatureOf(parts: readonly Frame[], key: string): string {
  const hmac = createHmac("sha256", key);
  for (const part of parts) hmac.update(part);
  return hmac.digest("hex");
}
