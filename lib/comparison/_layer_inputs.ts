import { checksFor } from "../check/mod.ts";
import { formFactors } from "../micromechanics/mod.ts";
import type { CoreLayer, ReinforcementLayer } from "../records/mod.ts";
import { fromHalfWidth, type Uncertain } from "../statistics/mod.ts";
import { spread } from "./_spread.ts";
import { coreShearModulusInput, fibreModulusInput, PART_THICKNESS } from "./input_names.ts";
import type { KnownOfPart, PredictionInput } from "./layup_inputs.ts";

const check = checksFor("predict from the lay-up schedule");

/** Half-width of what crimp may keep of the modulus, more or less: estimate of this project. */
const CRIMP_HALF_WIDTH = { woven: 0.05, mat: 0.08, stitched: 0.02, unidirectional: 0.02 };
/** Tolerance of core sheets: common practice, no source. */
const CORE_TOLERANCE = 0.2e-3;

/** Names of the inputs of a ply. */
export function plyNames(
  { reinforcement, fibre, resin }: ReinforcementLayer,
): Readonly<Record<"arealWeight" | "crimp" | "fibreModulus" | "resinModulus", string>> {
  return {
    arealWeight: `areal weight of ${reinforcement.name}`,
    crimp: `stiffness kept by ${reinforcement.name}`,
    fibreModulus: fibreModulusInput(fibre),
    resinModulus: `modulus of ${resin.name}`,
  };
}

/** Names of the inputs of a core. */
export function coreNames(
  { core }: CoreLayer,
): Readonly<Record<"thickness" | "shearModulus", string>> {
  return { thickness: `thickness of ${core.name}`, shearModulus: coreShearModulusInput(core) };
}

/** The fibre fraction that all plies share. */
export function fractionInput(
  first: ReinforcementLayer,
  { fibreFraction }: KnownOfPart,
): PredictionInput {
  if (fibreFraction !== undefined) {
    return {
      value: check.positive("weighed fibre fraction", fibreFraction.value),
      u: check.nonNegative("uncertainty of the fibre fraction", fibreFraction.u),
      dimension: "ratio",
      source: "weighed",
      reading: "weigh cloth, core and part again",
    };
  }
  return {
    value: first.fibreFraction,
    u: spread(first.reinforcement.typical.fibreFraction),
    dimension: "ratio",
    source: "lay-up schedule; range of the catalogue",
    reading: "weigh cloth, core and part",
  };
}

/** The other inputs of a ply. */
export function plyInputs(layer: ReinforcementLayer): Record<string, PredictionInput> {
  const { reinforcement, fibre, resin } = layer;
  const names = plyNames(layer);
  return {
    [names.arealWeight]: {
      value: reinforcement.arealWeight,
      u: spread(reinforcement.typical.arealWeight),
      dimension: "areal weight",
      source: reinforcement.source,
      reading: "weigh a square of the cloth",
    },
    [names.crimp]: {
      ...stiffnessKept(reinforcement),
      dimension: "ratio",
      reading: "bend or pull a solid coupon of the same cloth",
    },
    [names.fibreModulus]: {
      value: fibre.E1,
      u: spread(fibre.typical.E1),
      dimension: "modulus",
      source: fibre.source,
      reading: "bend or pull a solid coupon of the same cloth",
    },
    [names.resinModulus]: {
      value: resin.E,
      u: spread(resin.typical.E),
      dimension: "modulus",
      source: resin.source,
      reading: "bend a cast bar of the resin",
    },
  };
}

/** What the row's own tests say, else the estimate for its form and weave with a half-width. */
function stiffnessKept(
  reinforcement: ReinforcementLayer["reinforcement"],
): Uncertain & { readonly source: string } {
  if (reinforcement.stiffnessKept !== undefined) {
    return {
      value: reinforcement.stiffnessKept,
      u: spread(reinforcement.typical.stiffnessKept),
      source: reinforcement.source,
    };
  }
  const { stiffness, source } = formFactors(reinforcement);
  return { ...fromHalfWidth(stiffness, CRIMP_HALF_WIDTH[reinforcement.form]), source };
}

/** The inputs of a core. */
export function coreInputs(
  layer: CoreLayer,
  { thickness: measured }: KnownOfPart,
): Record<string, PredictionInput> {
  const { core, thickness } = layer;
  const names = coreNames(layer);
  return {
    [measured === undefined ? names.thickness : PART_THICKNESS]: {
      ...(measured ?? fromHalfWidth(thickness, CORE_TOLERANCE)),
      dimension: "thickness",
      source: measured === undefined
        ? "lay-up schedule; sheet tolerance, common practice, no source"
        : "measured",
      reading: "measure the part's thickness in several places with callipers",
    },
    [names.shearModulus]: {
      value: core.shearModulusL,
      u: spread(core.typical.shearModulusL),
      dimension: "modulus",
      source: core.source,
      reading: "weigh the core sheet for its density, or bend a beam at a short span",
    },
  };
}
