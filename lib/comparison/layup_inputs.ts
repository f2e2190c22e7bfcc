import { checksFor, type Fields } from "../check/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { coreLamina, curedPly } from "../micromechanics/mod.ts";
import type { Dimension } from "../quantity/mod.ts";
import type { CoreLayer, LayerRecord, LayupRecord, ReinforcementLayer } from "../records/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import { coreInputs, coreNames, fractionInput, plyInputs, plyNames } from "./_layer_inputs.ts";
import { checkLayup } from "./_layup_checks.ts";
import { MEASURED } from "./_shape.ts";
import { withModulus, withShearModulus } from "./_scaled_material.ts";
import { FIBRE_FRACTION, PART_THICKNESS } from "./input_names.ts";

const check = checksFor("predict from the lay-up schedule");

/** One input of a prediction, with where it came from and the reading that would settle it. */
export interface PredictionInput extends Uncertain {
  /** What kind of quantity it is, for showing it. */
  readonly dimension: Dimension;
  /** Where value and uncertainty come from. */
  readonly source: string;
  /** The reading that would tell more. */
  readonly reading: string;
}

/** What is known of a part beyond its schedule. */
export interface KnownOfPart {
  /** Fibre volume fraction as weighed; the schedule's if left out [1]. */
  readonly fibreFraction?: Uncertain;
  /**
   * Thickness of the finished part as measured; its core is then what the plies leave of it. The
   * schedule's core thickness counts if left out, or if there is not just one core [m].
   */
  readonly thickness?: Uncertain;
}

const KNOWN: Fields = { "fibreFraction?": MEASURED, "thickness?": MEASURED };

/** A lay-up as a formula: its inputs by name, and the stack that they make. */
export interface LayupModel {
  /** The inputs by name. */
  readonly inputs: Readonly<Record<string, PredictionInput>>;
  /** The stack for any values of the inputs [SI]. */
  readonly stack: (values: Readonly<Record<string, number>>) => Stack;
}

/**
 * A lay-up schedule as a formula of named inputs, each with its uncertainty: what a prediction,
 * its band and its budget are computed from.
 *
 * Plies share one fibre volume fraction, that of the schedule's first ply unless it was weighed;
 * plies with another scheduled fraction keep their ratio to it.
 *
 * Formula: each ply as `curedPly`, each core as `coreLamina`; u of a typical range
 * (high − low)/√12
 *
 * Range: as `curedPly`.
 *
 * Source: JCGM 100:2008, 4.3.7 (rectangular distribution of a range); catalogue rows for values.
 *
 * @param layup The schedule, materials filled in.
 * @param known What was weighed or measured [SI].
 * @returns Inputs by name, and the stack as a function of them.
 * @throws {InputError} If the schedule has no ply.
 *
 * @example
 * ```ts
 * import { type KnownOfPart, layupModel } from "@laminate/notebooks/comparison";
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const { fibres, resins, reinforcements } = await readCatalogue();
 * const weighed: KnownOfPart = { fibreFraction: { value: 0.42, u: 0.01 } };
 * const { inputs } = layupModel({
 *   name: "skin",
 *   layers: [{
 *     kind: "reinforcement",
 *     layer: 1,
 *     reinforcement: reinforcements.get("glass twill 200")!,
 *     fibre: fibres.get("E-glass")!,
 *     resin: resins.get("epoxy laminating slow")!,
 *     angleDeg: 0,
 *     fibreFraction: 0.4,
 *   }],
 * }, weighed);
 * assertEquals(inputs["fibre volume fraction"]!.value, 0.42);
 * ```
 */
export function layupModel(layup: LayupRecord, known: KnownOfPart = {}): LayupModel {
  checkLayup(check, layup);
  check.shape("what is known of the part", known, KNOWN);
  const plies = layup.layers.filter((layer) => layer.kind === "reinforcement");
  const cores = layup.layers.filter((layer) => layer.kind === "core");
  const first = plies[0] ?? check.refuse("plies", plies, "must be one or more");
  const inputs = Object.assign(
    { [FIBRE_FRACTION]: fractionInput(first, known) },
    ...plies.map(plyInputs),
    ...cores.map((core) => coreInputs(core, cores.length === 1 ? known : {})),
  ) as Record<string, PredictionInput>;
  const stack = (values: Readonly<Record<string, number>>): Stack => {
    const share = values[FIBRE_FRACTION]! / first.fibreFraction;
    const laid = plies.map((layer) => plyWith(layer, { values, share }));
    const left = (values[PART_THICKNESS] ?? 0) -
      laid.reduce((sum, { thickness }) => sum + thickness, 0);
    const made = new Map<LayerRecord, Ply>(plies.map((layer, i) => [layer, laid[i]!]));
    return layup.layers.map((layer) =>
      layer.kind === "core" ? coreWith(layer, { values, left }) : made.get(layer)!
    );
  };
  return { inputs, stack };
}

type Values = Readonly<Record<string, number>>;

function plyWith(
  layer: ReinforcementLayer,
  { values, share }: { readonly values: Values; readonly share: number },
): Ply {
  const names = plyNames(layer);
  const { lamina, thickness } = curedPly({
    reinforcement: { ...layer.reinforcement, arealWeight: values[names.arealWeight]! },
    fibre: withModulus(layer.fibre, values[names.fibreModulus]!),
    resin: { ...layer.resin, E: values[names.resinModulus]! },
    fibreVolumeFraction: share * layer.fibreFraction,
    stiffnessFactor: values[names.crimp]!,
  });
  return { lamina, thickness, angleDeg: layer.angleDeg };
}

function coreWith(
  layer: CoreLayer,
  { values, left }: { readonly values: Values; readonly left: number },
): Ply {
  const names = coreNames(layer);
  const thickness = values[names.thickness] ?? left;
  return {
    lamina: coreLamina(withShearModulus(layer.core, values[names.shearModulus]!)),
    thickness: check.positive("thickness left for the core", thickness, "m"),
    angleDeg: layer.angleDeg,
  };
}

/**
 * The stack of a lay-up schedule at the middle of every input.
 *
 * Formula: as `layupModel`
 *
 * Range: as `layupModel`.
 *
 * Source: as `layupModel`.
 *
 * @param layup The schedule, materials filled in.
 * @param known What was weighed or measured [SI].
 * @returns The stack, mould side first.
 * @throws {InputError} If the schedule has no ply or a figure cannot be meant.
 *
 * @example
 * ```ts
 * import { layupStack } from "@laminate/notebooks/comparison";
 * import { InputError } from "@laminate/notebooks/check";
 * import { assertThrows } from "@std/assert";
 *
 * assertThrows(() => layupStack({ name: "empty", layers: [] }), InputError, "one or more");
 * ```
 */
export function layupStack(layup: LayupRecord, known: KnownOfPart = {}): Stack {
  const { inputs, stack } = layupModel(layup, known);
  return stack(
    Object.fromEntries(Object.entries(inputs).map(([name, { value }]) => [name, value])),
  );
}
