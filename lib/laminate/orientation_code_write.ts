import { checksFor } from "../check/mod.ts";
import type {
  ClothEntry,
  LayerEntry,
  OrientationCode,
  OrientationEntry,
  PlyEntry,
} from "./orientation_code.ts";
import type { CodeLayer } from "./orientation_code_layers.ts";
import { checkCodeAngle, checkEntry, checkKey, MOST_PLIES } from "./_orientation_code_check.ts";

const check = checksFor("write the orientation code");

/** How a code is written: in print signs, or as it can be typed on any keyboard. */
export type CodeStyle = "print" | "typed";

/**
 * Writes an orientation code: in print `[±45/0₂/9̅0̅]s`, typed `[+-45/0_2/90|]s`.
 *
 * Formula: none; `readOrientationCode` reads either form back to the same code
 *
 * Range: any code
 *
 * Source: ASTM D6507 for the code, from memory; see `readOrientationCode` for our own forms.
 *
 * @param code The code taken apart.
 * @param style In print signs or typed; print if left out.
 * @returns The code as text.
 * @throws {InputError} If the code is not a code taken apart, or the style unknown.
 *
 * @example
 * ```ts
 * import { readOrientationCode, writeOrientationCode } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const code = readOrientationCode("[+-45/0_2/(0/90)]_2s");
 * assertEquals(writeOrientationCode(code), "[±45/0₂/(0/90)]₂s");
 * assertEquals(writeOrientationCode(code, "typed"), "[+-45/0_2/(0/90)]_2s");
 * ```
 */
export function writeOrientationCode(code: OrientationCode, style: CodeStyle = "print"): string {
  checkEntry(check, code);
  check.oneOf("style", style, ["print", "typed"]);
  return written(code, style) + (code.total ? "T" : "");
}

function written(entry: OrientationEntry, style: CodeStyle): string {
  const pair = style === "print" ? ["±", "∓"] : ["+-", "-+"];
  switch (entry.kind) {
    case "group": {
      const inner = entry.entries.map((item) => written(item, style)).join("/");
      return `[${inner}]${copies(entry.count, style)}${entry.symmetric ? "s" : ""}`;
    }
    case "pair": {
      const sign = entry.angleDeg < 0 ? pair[1] : pair[0];
      const angle = digits(Math.abs(entry.angleDeg));
      return `${sign}${angle}${entry.material === undefined ? "" : `_${entry.material}`}`;
    }
    case "ply":
      return marked(digits(entry.angleDeg), entry, style);
    case "cloth": {
      const opposite = entry.angleDeg === -entry.weftDeg;
      const directions = opposite
        ? `${entry.angleDeg < 0 ? pair[1] : pair[0]}${digits(Math.abs(entry.angleDeg))}`
        : `${digits(entry.angleDeg)}/${digits(entry.weftDeg)}`;
      return marked(`(${directions})`, entry, style);
    }
    case "layer": {
      const { material, ...unnamed } = entry;
      return marked(material, unnamed, style);
    }
  }
}

/** A number that the reader takes back: no exponent. */
function digits(angleDeg: number): string {
  const text = String(angleDeg);
  return text.includes("e") ? angleDeg.toFixed(20).replace(/\.?0+$/, "") : text;
}

function marked(
  text: string,
  { count, material, middle }: Pick<PlyEntry | ClothEntry, "count" | "material" | "middle">,
  style: CodeStyle,
): string {
  const overlined = middle && style === "print" && /^[\d.-]+$/.test(text);
  const body = overlined ? text.replace(/[\d.]/g, "$&\u0305") : text;
  const key = material === undefined ? "" : `_${material}`;
  return `${body}${copies(count, style)}${key}${middle && !overlined ? "|" : ""}`;
}

function copies(count: number, style: CodeStyle): string {
  if (count === 1) return "";
  return style === "typed"
    ? `_${count}`
    : String(count).replace(/\d/g, (digit) => "₀₁₂₃₄₅₆₇₈₉"[Number(digit)]!);
}

/**
 * A short orientation code for a list of layers: mirrored halves, repeats, equal neighbours and
 * opposite angles are gathered.
 *
 * Formula: none; `layersOfCode` gives the same layers back
 *
 * Range: 1 to 1000 layers with angles from −90° to 90°
 *
 * Source: ASTM D6507 for the code, from memory
 *
 * @param layers Layers, mould side first, with angles [deg].
 * @returns The code taken apart.
 * @throws {InputError} If the list is empty, or an angle outside −90° to 90°.
 *
 * @example
 * ```ts
 * import { codeOfLayers, writeOrientationCode } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const layers = [0, 90, 0, 90, 90, 0, 90, 0]
 *   .map((angleDeg) => ({ kind: "ply" as const, angleDeg }));
 * assertEquals(writeOrientationCode(codeOfLayers(layers)), "[0/90]₂s");
 * ```
 */
export function codeOfLayers(layers: readonly CodeLayer[]): OrientationCode {
  check.list("list of layers", layers);
  check.within("number of layers", layers.length, { min: 1, max: MOST_PLIES });
  layers.forEach(checkLayer);
  const symmetric = layers.length > 1 &&
    layers.every((layer, index) => isSame(layer, layers[layers.length - 1 - index]!));
  const half = symmetric ? layers.slice(0, Math.ceil(layers.length / 2)) : layers;
  const middle = symmetric && layers.length % 2 === 1;
  const period = middle ? half.length : shortestPeriod(half);
  return {
    kind: "group",
    entries: gathered(half.slice(0, period), middle),
    count: half.length / period,
    symmetric,
    total: false,
  };
}

function checkLayer(layer: CodeLayer, index: number): void {
  const where = `layer ${index + 1}`;
  check.object(where, layer);
  check.oneOf(`kind of ${where}`, layer.kind, ["ply", "cloth", "layer"]);
  checkCodeAngle(check, layer.angleDeg);
  if (layer.kind === "layer" || layer.material !== undefined) checkKey(check, layer.material!);
}

function isSame(a: CodeLayer, b: CodeLayer): boolean {
  return a.kind === b.kind && a.angleDeg === b.angleDeg && a.material === b.material;
}

function shortestPeriod(layers: readonly CodeLayer[]): number {
  // A run of equal layers reads better as one entry with a subscript than as a repeated bracket.
  if (layers.every((layer) => isSame(layer, layers[0]!))) return layers.length;
  for (let period = 1; period < layers.length; period++) {
    if (layers.length % period !== 0) continue;
    if (layers.every((layer, index) => isSame(layer, layers[index % period]!))) return period;
  }
  return layers.length;
}

/** Runs become one entry, +θ/−θ a pair; the last layer stays alone if it is the middle ply. */
function gathered(layers: readonly CodeLayer[], middle: boolean): readonly OrientationEntry[] {
  const entries: OrientationEntry[] = [];
  const end = middle ? layers.length - 1 : layers.length;
  let index = 0;
  while (index < end) {
    const layer = layers[index]!;
    let count = 1;
    while (index + count < end && isSame(layer, layers[index + count]!)) count++;
    if (count === 1 && index + 1 < end && isPair(layers, index, end)) {
      entries.push({
        kind: "pair",
        angleDeg: layer.angleDeg,
        ...(layer.material === undefined ? {} : { material: layer.material }),
      });
      index += 2;
    } else {
      entries.push(entryOf(layer, count, false));
      index += count;
    }
  }
  if (middle) entries.push(entryOf(layers[end]!, 1, true));
  return entries;
}

/** Whether a single +θ is followed by a single −θ. */
function isPair(layers: readonly CodeLayer[], index: number, end: number): boolean {
  const [first, second] = [layers[index]!, layers[index + 1]!];
  if (first.kind !== "ply" || second.kind !== "ply" || first.material !== second.material) {
    return false;
  }
  if (first.angleDeg === 0 || first.angleDeg !== -second.angleDeg) return false;
  return index + 2 >= end || !isSame(second, layers[index + 2]!);
}

function entryOf(layer: CodeLayer, count: number, middle: boolean): OrientationEntry {
  const named = layer.material === undefined ? {} : { material: layer.material };
  if (layer.kind === "layer") {
    return { kind: "layer", material: layer.material!, count, middle } satisfies LayerEntry;
  }
  const { angleDeg } = layer;
  if (layer.kind === "ply") return { kind: "ply", angleDeg, ...named, count, middle };
  const weftDeg = angleDeg > 0 ? angleDeg - 90 : angleDeg + 90;
  return { kind: "cloth", angleDeg, weftDeg, ...named, count, middle };
}
