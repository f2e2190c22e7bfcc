import { checksFor, InputError } from "../check/mod.ts";

/** The encodings in which a table may be held. */
export type Encoding = "utf-8" | "windows-1252";

/** How bytes become text. */
export interface DecodeOptions {
  /** The name of the file, for messages. */
  readonly file?: string;
  /** The encoding; `utf-8` if left out. */
  readonly encoding?: Encoding;
}

const check = checksFor("read the table");
const encodings: readonly Encoding[] = ["utf-8", "windows-1252"];
const saveAgain = 'must be text in UTF-8: save it again as "CSV UTF-8"';

/**
 * Bytes of a CSV file as text; what is not text in the stated encoding is refused, since a guess
 * would change a degree sign or a name without a word.
 *
 * The mark at the beginning of a UTF-8 file (byte order mark) is dropped.
 *
 * Range: UTF-8, or windows-1252 where it is asked for; UTF-16 is refused
 *
 * Source: Encoding Standard (WHATWG), the decoders of the platform
 *
 * @param bytes The file's bytes.
 * @param options The file's name for messages, and its encoding.
 * @returns The text, without a byte order mark.
 * @throws {InputError} If the bytes are no text in that encoding.
 *
 * @example
 * ```ts
 * import { decodeText } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(decodeText(new Uint8Array([0xef, 0xbb, 0xbf, 0x61])), "a");
 * assertEquals(decodeText(new Uint8Array([0xb0]), { encoding: "windows-1252" }), "°");
 * ```
 */
export function decodeText(bytes: Uint8Array, options: DecodeOptions = {}): string {
  const { file, encoding = "utf-8" } = check.object("options", options);
  check.oneOf("encoding", encoding, encodings);
  const refuse = (value: string, line: number, wanted: string): never => {
    throw new InputError("read the table", [{
      argument: "encoding",
      value,
      wanted,
      line,
      ...(file === undefined ? {} : { file }),
    }]);
  };
  if (!(bytes instanceof Uint8Array)) return check.refuse("bytes", bytes, "must be a Uint8Array");
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff)) {
    return refuse("UTF-16", 1, saveAgain);
  }
  const zero = bytes.indexOf(0);
  if (zero >= 0) {
    // ASCII text in UTF-16 has a zero at every other byte; a lone zero is damage.
    const head = bytes.subarray(0, 512);
    const zeros = head.reduce((sum, byte) => sum + (byte === 0 ? 1 : 0), 0);
    return 3 * zeros > head.length
      ? refuse("UTF-16 without a mark", 1, saveAgain)
      : refuse("text with a NUL byte", lineAt(bytes, zero), saveAgain);
  }
  try {
    return new TextDecoder(encoding, { fatal: true }).decode(bytes);
  } catch {
    const wrong = firstWrongByte(bytes);
    return refuse(
      `not UTF-8 (byte 0x${bytes[wrong]?.toString(16) ?? "?"})`,
      lineAt(bytes, wrong),
      `${saveAgain}, or say that its encoding is windows-1252`,
    );
  }
}

function lineAt(bytes: Uint8Array, end: number): number {
  let line = 1;
  for (let i = 0; i < end; i++) {
    // CR LF is one line end: it is counted at its CR.
    if (bytes[i] === 13 || (bytes[i] === 10 && bytes[i - 1] !== 13)) line++;
  }
  return line;
}

/** Place of the first byte that no UTF-8 text can have there, by halving. */
function firstWrongByte(bytes: Uint8Array): number {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    try {
      // `stream` lets the piece end within a character.
      new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(0, middle), { stream: true });
      good = middle;
    } catch {
      bad = middle;
    }
  }
  return Math.max(bad - 1, 0);
}
