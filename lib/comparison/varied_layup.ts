import { checksFor } from "../check/mod.ts";
import type { LayerRecord, LayupRecord } from "../records/mod.ts";
import { checkLayup } from "./_layup_checks.ts";

const check = checksFor("vary the lay-up");

/** Plies of a face beyond which nobody means them. */
const MOST_PLIES = 1000;

/** What may be chosen otherwise; what is left out stays as scheduled. */
export interface LayupChoice {
  /** Plies on each side of the core: the scheduled ones from the outside in, repeated [1]. */
  readonly pliesPerFace?: number;
  /** Thickness of the core [m]. */
  readonly coreThickness?: number;
  /** Fibre volume fraction of every ply [1]. */
  readonly fibreFraction?: number;
}

/**
 * A lay-up schedule with another number of plies, core thickness or fibre fraction.
 *
 * @param layup A schedule with one core between plies.
 * @param choice Plies per face [1], core thickness [m], fibre fraction [1].
 * @returns The schedule so changed, its layers counted anew.
 * @throws {InputError} If the schedule has no single core between plies, or a choice cannot be
 * meant.
 *
 * @example
 * ```ts
 * import { variedLayup } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const lighter = variedLayup(layups.get("sole")!, { pliesPerFace: 1 });
 * assertEquals(lighter.layers.map(({ kind }) => kind), ["reinforcement", "core", "reinforcement"]);
 * ```
 */
export function variedLayup(layup: LayupRecord, choice: LayupChoice): LayupRecord {
  checkLayup(check, layup);
  check.object("choice", choice);
  const { pliesPerFace, coreThickness, fibreFraction } = choice;
  if (pliesPerFace !== undefined) {
    check.count("plies per face", pliesPerFace, 1);
    check.within("plies per face", pliesPerFace, { min: 1, max: MOST_PLIES });
  }
  if (coreThickness !== undefined) check.positive("core thickness", coreThickness, "m");
  if (fibreFraction !== undefined) {
    check.within("fibre fraction", fibreFraction, { min: 0.05, max: 0.8 });
  }
  const { layers } = layup;
  const middle = layers.findIndex(({ kind }) => kind === "core");
  const below = layers.slice(0, Math.max(0, middle));
  const above = layers.slice(middle + 1);
  if (below.length === 0 || above.length === 0 || above.some(({ kind }) => kind === "core")) {
    check.refuse("lay-up", layers, "must have one core with plies on both sides");
  }
  const core = layers[middle] as Extract<LayerRecord, { kind: "core" }>;
  const changed: readonly LayerRecord[] = [
    ...repeated(below, pliesPerFace ?? below.length),
    coreThickness === undefined ? core : { ...core, thickness: coreThickness },
    ...repeated(above.toReversed(), pliesPerFace ?? above.length).toReversed(),
  ];
  return Object.freeze({
    name: layup.name,
    layers: Object.freeze(changed.map((layer, i) => ({
      ...layer,
      layer: i + 1,
      ...(layer.kind === "core" || fibreFraction === undefined ? {} : { fibreFraction }),
    }))),
  });
}

/** The face's plies from the outside in, over again until there are enough. */
function repeated(face: readonly LayerRecord[], count: number): readonly LayerRecord[] {
  return Array.from({ length: count }, (_, i) => face[i % face.length]!);
}
