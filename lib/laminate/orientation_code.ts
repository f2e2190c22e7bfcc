import { checksFor } from "../check/mod.ts";
import { parseCode } from "./_orientation_code.ts";

const check = checksFor("read the orientation code");

/** What the one-ply entries of an orientation code have in common. */
export interface CodeEntry {
  /** Key of the material, where the code names one (a hybrid). */
  readonly material?: string;
  /** How many of them lie on each other [1]. */
  readonly count: number;
  /** Whether the plane of symmetry cuts through it, so that it is not mirrored. */
  readonly middle: boolean;
}

/** A ply with one direction: `0`, `-45_2`, `90_C`. */
export interface PlyEntry extends CodeEntry {
  /** Which kind of entry it is. */
  readonly kind: "ply";
  /** From x to the fibre, positive towards y [deg]. */
  readonly angleDeg: number;
}

/** A cloth, one ply with fibres in two directions at right angles: `(0/90)`, `(±45)`. */
export interface ClothEntry extends CodeEntry {
  /** Which kind of entry it is. */
  readonly kind: "cloth";
  /** From x to the warp, written first [deg]. */
  readonly angleDeg: number;
  /** From x to the weft [deg]. */
  readonly weftDeg: number;
}

/** A layer known by its material alone: `core`, `mat`. */
export interface LayerEntry extends CodeEntry {
  /** Which kind of entry it is. */
  readonly kind: "layer";
  /** Key of the material. */
  readonly material: string;
}

/** Two plies at opposite angles: `±45` is +45 first, `∓45` is −45 first. */
export interface PairEntry {
  /** Which kind of entry it is. */
  readonly kind: "pair";
  /** Angle of the first of the two; the second has the opposite [deg]. */
  readonly angleDeg: number;
  /** Key of the material of both, where the code names one. */
  readonly material?: string;
}

/** Entries in square brackets, repeated and then mirrored: `[0/90]_2s`. */
export interface GroupEntry {
  /** Which kind of entry it is. */
  readonly kind: "group";
  /** Entries, mould side first. */
  readonly entries: readonly OrientationEntry[];
  /** How often the entries are repeated, before they are mirrored [1]. */
  readonly count: number;
  /** Whether the repeated entries are followed by their mirror image. */
  readonly symmetric: boolean;
}

/** What may stand between two strokes of an orientation code. */
export type OrientationEntry = PlyEntry | ClothEntry | LayerEntry | PairEntry | GroupEntry;

/** A lay-up in the form of an orientation code. */
export interface OrientationCode extends GroupEntry {
  /** Whether the code says that it is complete, with a `T`. */
  readonly total: boolean;
}

/**
 * Reads a laminate orientation code: `[0/90]s`, `[±45/0₂/90]₂s`, `[(0/90)/core/(0/90)]`.
 *
 * Plies are listed mould side first, parted by `/`. Subscripts are typed `_2` or `₂`; `±` may be
 * typed `+-`, `∓` `-+`. A cloth stands in round brackets as one ply, warp first. Square brackets
 * inside repeat a group: `[0/[45/-45]_2/90]s`. A material key follows an underscore: `0_2_C`; a
 * layer without a direction is known by its key alone: `core`. At the end `s` mirrors, a number
 * repeats (first repeated, then mirrored), `T` says that the code is complete. The middle ply
 * that mirroring does not double, overlined in print, may be typed with a stroke: `[0/90|]s`.
 *
 * Formula: none
 *
 * Range: angles from −90° to 90°, up to 1000 plies, 20000 characters and 20 brackets
 * inside each other
 *
 * Source: ASTM D6507 for the code, from memory; the stroke, the underscore before a material and
 * square brackets inside are typed forms of our own.
 *
 * @param text The code.
 * @returns The code taken apart.
 * @throws {InputError} If the text is no code, or part of it could mean two things; the message
 * points at the character.
 *
 * @example
 * ```ts
 * import { layersOfCode, readOrientationCode } from "@laminate/notebooks/laminate";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertEquals, assertThrows } from "@std/assert";
 *
 * const code = readOrientationCode("[+-45/0_2/90|]s");
 * const angles = layersOfCode(code).map((layer) => layer.angleDeg);
 * assertEquals(angles, [45, -45, 0, 0, 90, 0, 0, -45, 45]);
 * assertThrows(() => readOrientationCode("[0/9o]s"), InputError, "at character 5");
 * ```
 */
export function readOrientationCode(text: string): OrientationCode {
  if (typeof text !== "string") {
    return check.refuse("the code", text, "must be text such as [0/90]s");
  }
  const read = parseCode(text);
  if (!("wanted" in read)) return read;
  const character = [...text.slice(0, read.at)].length + 1;
  return check.refuse(
    "the code",
    text,
    `at character ${character} ${read.wanted}\n${pointedAt(text, read.at)}`,
  );
}

/** How much of a long code is shown on either side of its fault. */
const MARGIN = 40;

/** The code on a line, and a caret below the character at `at`. */
function pointedAt(text: string, at: number): string {
  const start = Math.max(0, at - MARGIN);
  const line = (piece: string): string => piece.replace(/\s/g, " ");
  const before = line(text.slice(start, at));
  // Overlines stand on the character before them and take no room of their own.
  const room = [...before].filter((sign) => !/\p{M}/u.test(sign)).length;
  return `  ${before}${line(text.slice(at, at + MARGIN))}\n  ${" ".repeat(room)}^`;
}
