import { type Checks, checksFor } from "../check/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";
import { checkExpansion } from "./_free_strain.ts";
import type {
  Curvature,
  ForcesAndMoments,
  LaminateStrain,
  LaminateStress,
  PlyStrain,
  PlyStress,
} from "./plane_state.ts";
import { FORCES, responseOf, STRAINS } from "./_response.ts";

const check = checksFor("compute the response of the laminate");

/**
 * What is done to a laminate. In each of the six directions give the force or the strain, not
 * both; where neither is given the force is 0.
 */
export interface LaminateLoad {
  /** Force along x on the edge facing x [N/m]. */
  readonly Nx?: number;
  /** Force along y on the edge facing y [N/m]. */
  readonly Ny?: number;
  /** Shear force [N/m]. */
  readonly Nxy?: number;
  /** Moment of the stresses σx: positive pulls on the bag side [N]. */
  readonly Mx?: number;
  /** Moment of the stresses σy: positive pulls on the bag side [N]. */
  readonly My?: number;
  /** Twisting moment [N]. */
  readonly Mxy?: number;
  /** Imposed total strain of the middle along x, instead of Nx [1]. */
  readonly epsilonX?: number;
  /** Imposed total strain of the middle along y, instead of Ny [1]. */
  readonly epsilonY?: number;
  /** Imposed total engineering shear strain of the middle, instead of Nxy [1]. */
  readonly gammaXY?: number;
  /** Imposed curvature −∂²w/∂x², instead of Mx [1/m]. */
  readonly kappaX?: number;
  /** Imposed curvature −∂²w/∂y², instead of My [1/m]. */
  readonly kappaY?: number;
  /** Imposed twist −2 ∂²w/∂x∂y, instead of Mxy [1/m]. */
  readonly kappaXY?: number;
  /** Temperature less the temperature at which the laminate was free of stress [K]. */
  readonly temperatureChange?: number;
  /** Moisture content by mass less that at which the laminate was free of stress [1]. */
  readonly moistureChange?: number;
}

/** Strain and stress at one height of a ply. */
export interface PlyPoint {
  /** Height over the middle of the laminate, mould side negative [m]. */
  readonly z: number;
  /** Total strain in the axes of the laminate: the change of shape [1]. */
  readonly totalStrain: LaminateStrain;
  /** Total strain in the axes of the ply [1]. */
  readonly totalPlyStrain: PlyStrain;
  /** Total strain less the ply's free expansion, in the axes of the laminate: makes stress [1]. */
  readonly mechanicalStrain: LaminateStrain;
  /** Total strain less the ply's free expansion, in the axes of the ply [1]. */
  readonly mechanicalPlyStrain: PlyStrain;
  /** Stress in the axes of the laminate [Pa]. */
  readonly stress: LaminateStress;
  /** Stress in the axes of the ply [Pa]. */
  readonly plyStress: PlyStress;
}

/** Strain and stress of one ply. */
export interface PlyResponse {
  /** The ply, as it stands in the stack. */
  readonly ply: Ply;
  /** At its face towards the mould. */
  readonly bottom: PlyPoint;
  /** At its middle. */
  readonly middle: PlyPoint;
  /** At its face towards the bag. */
  readonly top: PlyPoint;
}

/** What a laminate does under a load. */
export interface LaminateResponse {
  /** Total strain of the middle [1]. */
  readonly midPlaneStrain: LaminateStrain;
  /** Curvature [1/m]. */
  readonly curvature: Curvature;
  /** Forces and moments: those given, and those that hold what was imposed [N/m], [N]. */
  readonly forces: ForcesAndMoments;
  /** Forces and moments that would strain the laminate as the change in climate does [N/m], [N]. */
  readonly freeForces: ForcesAndMoments;
  /** One entry a ply, in the order of the stack. */
  readonly plies: readonly PlyResponse[];
}

/**
 * Strain and stress of a laminate and its plies under forces, moments, imposed strains and
 * curvatures, or a mix, with changes of temperature and moisture.
 *
 * Formula: [N; M] = [A B; B D] [ε⁰; κ] − [N_T; M_T], N_T = Σ Q̄ ᾱ ΔT t; ε(z) = ε⁰ + z κ;
 * σ = Q̄ (ε − ᾱ ΔT), moisture likewise with β̄
 *
 * Range: linear; small deflection; away from edges, holes and loads by a few thicknesses, where
 * stress through the thickness matters too.
 *
 * Source: R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, chapter 4, from memory.
 *
 * @param stack Plies, mould side first.
 * @param load What is done to it.
 * @returns Strain, curvature, forces, and the state of each ply at bottom, middle and top.
 * @throws {InputError} If the stack is empty, a ply's lamina, thickness or angle is not possible,
 * a load is not a number or not known by that name, force and strain are both given in one
 * direction, or an expansion that is needed is missing.
 *
 * @example
 * ```ts
 * import { laminateResponse } from "@laminate/notebooks/laminate";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass cloth", E1: 20e9, E2: 20e9, G12: 4e9, nu12: 0.1, G13: 3e9, G23: 3e9,
 *   density: 1800, alpha1: 15e-6, alpha2: 15e-6,
 * };
 * const stack = [{ lamina, thickness: 0.002, angleDeg: 0 }];
 *
 * const pulled = laminateResponse(stack, { Nx: 40e3 });
 * assertAlmostEquals(pulled.midPlaneStrain.epsilonX, 0.001, 1e-12);
 * assertAlmostEquals(pulled.plies[0]!.top.plyStress.sigma1, 20e6, 1e-3);
 *
 * const heldWhileWarmed = laminateResponse(stack, {
 *   epsilonX: 0, epsilonY: 0, temperatureChange: 40,
 * });
 * assertAlmostEquals(heldWhileWarmed.forces.Nx, -20e9 * 15e-6 * 40 * 0.002 / 0.9, 1e-6);
 * ```
 */
export function laminateResponse(stack: Stack, load: LaminateLoad): LaminateResponse {
  const { temperatureChange = 0, moistureChange = 0 } = checkLoad(check, load);
  const change = { temperature: temperatureChange, moisture: moistureChange };
  checkStack(check, stack, checkExpansion(check, change));
  const response = responseOf(stack, load, change);
  const { epsilonX, epsilonY, gammaXY } = response.midPlaneStrain;
  const { kappaX, kappaY, kappaXY } = response.curvature;
  for (const value of [epsilonX, epsilonY, gammaXY, kappaX, kappaY, kappaXY]) {
    check.result("strain", value);
  }
  for (const { bottom, top } of response.plies) {
    for (const { plyStress } of [bottom, top]) {
      for (const stress of Object.values(plyStress)) check.result("stress", stress, "Pa");
    }
  }
  return response;
}

const UNITS: Readonly<Record<keyof LaminateLoad, string | undefined>> = {
  ...{ Nx: "N/m", Ny: "N/m", Nxy: "N/m", Mx: "N", My: "N", Mxy: "N" },
  ...{ epsilonX: undefined, epsilonY: undefined, gammaXY: undefined },
  ...{ kappaX: "1/m", kappaY: "1/m", kappaXY: "1/m" },
  ...{ temperatureChange: "K", moistureChange: undefined },
};

/** Refuses a load that is no number, not known by its name, or given twice over. */
function checkLoad(check: Checks, load: LaminateLoad): LaminateLoad {
  check.object("load", load);
  for (const [name, value] of Object.entries(load)) {
    if (!Object.hasOwn(UNITS, name)) {
      // A notebook does not check types: a misspelt load would otherwise count as 0.
      check.refuse(
        `load named ${JSON.stringify(name)}`,
        value,
        `must be one of: ${Object.keys(UNITS).join(", ")}`,
      );
    }
    if (value !== undefined) check.finite(name, value, UNITS[name as keyof LaminateLoad]);
  }
  FORCES.forEach((force, i) => {
    const strain = STRAINS[i]!;
    if (load[force] !== undefined && load[strain] !== undefined) {
      check.refuse(
        strain,
        load[strain],
        `must not be given beside ${force}: one follows from the other`,
      );
    }
  });
  return load;
}
