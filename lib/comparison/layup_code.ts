import { checksFor } from "../check/mod.ts";
import {
  type CodeLayer,
  type CodeMaterials,
  codeOfLayers,
  type LayerMaterial,
  writeOrientationCode,
} from "../laminate/mod.ts";
import type { Stack } from "../materials/mod.ts";
import type { LayerRecord, LayupRecord } from "../records/mod.ts";
import { checkLayup } from "./_layup_checks.ts";

const check = checksFor("write the lay-up as a code");

/** What a sign of a lay-up's code stands for. */
export interface CodeMeaning {
  /** The key, or what stands without one: "ply" (an angle) or "cloth" (two in brackets). */
  readonly sign: string;
  /** Whether the sign is a key that the code names. */
  readonly named: boolean;
  /** The first layer of the schedule that it stands for. */
  readonly layer: LayerRecord;
}

/** A lay-up schedule as an orientation code. */
export interface LayupCode {
  /** The code in print signs. */
  readonly text: string;
  /** The code as it can be typed. */
  readonly typed: string;
  /** What its signs stand for, in the order in which they come up. */
  readonly meanings: readonly CodeMeaning[];
  /** The materials of the code's layers, taken out of the schedule's stack. */
  readonly materials: (stack: Stack) => CodeMaterials;
}

/**
 * The orientation code of a lay-up schedule, with keys where it has more than one kind of ply or
 * of cloth, and for mats and cores. With its materials `stackOfCode` gives the schedule's stack.
 *
 * A stitched biaxial counts as a cloth. A mat or core that lies at an angle is written with it.
 *
 * Formula: `codeOfLayers`; keys glass, carbon, … by fibre, mat, core; numbered from the second on
 *
 * Range: as `codeOfLayers`
 *
 * Source: ASTM D6507 for the code, from memory; the keys are our own.
 *
 * @param layup The schedule, materials filled in.
 * @returns The code, what its signs mean, and the materials for `stackOfCode`.
 * @throws {InputError} If the schedule has no layer, or too many.
 *
 * @example
 * ```ts
 * import { layupCode, layupStack } from "@laminate/notebooks/comparison";
 * import { stackDifferences, stackOfCode } from "@laminate/notebooks/laminate";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const sole = layups.get("sole")!;
 * const { text, typed, materials } = layupCode(sole);
 * assertEquals(text, "[(0/90)₂/core|]s");
 * const stack = layupStack(sole);
 * assertEquals(stackDifferences(stack, stackOfCode(typed, materials(stack))), []);
 * ```
 */
export function layupCode(layup: LayupRecord): LayupCode {
  checkLayup(check, layup);
  const records = check.list("layers", layup.layers);
  const signs = signsOf(records);
  const layers = records.map((record): CodeLayer => {
    const { kind, key } = signs.get(identityOf(record))!;
    const angleDeg = turned(record.angleDeg);
    // A layer of its own has no angle in the code; one that lies at an angle is written as a ply.
    const written = kind === "layer" && angleDeg !== 0 ? "ply" : kind;
    return { kind: written, angleDeg, ...(key === undefined ? {} : { material: key }) };
  });
  const code = codeOfLayers(layers);
  return Object.freeze({
    text: writeOrientationCode(code),
    typed: writeOrientationCode(code, "typed"),
    meanings: Object.freeze(
      [...signs.values()].map(({ kind, key, layer }) =>
        Object.freeze({ sign: key ?? kind, named: key !== undefined, layer })
      ),
    ),
    materials: (stack: Stack) => materialsOf(records, signs, stack),
  });
}

type CodeKind = CodeLayer["kind"];

/** How one material of the schedule is written, and the layer where it first comes up. */
interface Sign {
  readonly kind: CodeKind;
  readonly key?: string;
  readonly layer: LayerRecord;
}

/** The same for layers that come out as the same lamina of the same thickness. */
function identityOf(record: LayerRecord): string {
  return record.kind === "core"
    ? JSON.stringify([record.core.name, record.thickness])
    : JSON.stringify([record.reinforcement.name, record.resin.name, record.fibreFraction]);
}

function kindOf(record: LayerRecord): CodeKind {
  if (record.kind === "core" || record.reinforcement.form === "mat") return "layer";
  return record.reinforcement.form === "unidirectional" ? "ply" : "cloth";
}

function signsOf(records: readonly LayerRecord[]): ReadonlyMap<string, Sign> {
  const first = new Map<string, LayerRecord>();
  for (const record of records) {
    const identity = identityOf(record);
    if (!first.has(identity)) first.set(identity, record);
  }
  const used = new Map<string, number>();
  const single = (kind: CodeKind): boolean =>
    [...first.values()].filter((record) => kindOf(record) === kind).length === 1;
  return new Map([...first].map(([identity, layer]): [string, Sign] => {
    const kind = kindOf(layer);
    if (kind !== "layer" && single(kind)) return [identity, { kind, layer }];
    const word = layer.kind === "core"
      ? "core"
      : layer.reinforcement.form === "mat"
      ? "mat"
      : layer.fibre.kind;
    const number = (used.get(word) ?? 0) + 1;
    used.set(word, number);
    return [identity, { kind, key: number === 1 ? word : `${word}${number}`, layer }];
  }));
}

/** The angle by which a code writes it: half a turn changes nothing [deg]. */
function turned(angleDeg: number): number {
  const rest = angleDeg % 180;
  return (rest > 90 ? rest - 180 : rest <= -90 ? rest + 180 : rest) + 0;
}

function materialsOf(
  records: readonly LayerRecord[],
  signs: ReadonlyMap<string, Sign>,
  stack: Stack,
): CodeMaterials {
  check.list("stack", stack);
  if (stack.length !== records.length) {
    check.refuse("stack", stack, `must have the ${records.length} layers of the schedule`);
  }
  const named: Record<string, LayerMaterial> = {};
  const unnamed: Partial<Record<"ply" | "cloth", LayerMaterial>> = {};
  for (const { kind, key, layer } of signs.values()) {
    const { lamina, thickness } = stack[records.indexOf(layer)]!;
    if (key !== undefined) named[key] = { lamina, thickness };
    else if (kind !== "layer") unnamed[kind] = { lamina, thickness };
  }
  return { ...unnamed, named };
}
