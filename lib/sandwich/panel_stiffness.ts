import { checksFor } from "../check/mod.ts";
import {
  type LaminateStiffness,
  laminateStiffness,
  laminateThickness,
  massPerArea,
  transverseShearStiffness,
} from "../laminate/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { inverse3, multiply } from "../numeric/mod.ts";
import { checkPlies, coreIndexOf, findCore, transverseModuli } from "./_core_of_stack.ts";

const check = checksFor("compute the panel's stiffness");

/** Shear stiffness of a panel, for each metre of width. Index 4 is y and z, 5 is x and z. */
export interface PanelShear {
  /** Qy for the shear strain γyz [N/m]. */
  readonly S44: number;
  /** Qy for γxz, and Qx for γyz; 0 where the axes of shear are x and y [N/m]. */
  readonly S45: number;
  /** Qx for γxz [N/m]. */
  readonly S55: number;
}

/** Stiffness of a panel for each metre of width: plate values, contraction hindered. */
export interface PanelStiffness {
  /** Mx for the curvature along x [N·m]. */
  readonly D11: number;
  /** Mx for the curvature along y [N·m]. */
  readonly D12: number;
  /** Mx for the twist; 0 unless plies lie askew [N·m]. */
  readonly D16: number;
  /** My for the curvature along y [N·m]. */
  readonly D22: number;
  /** My for the twist; 0 unless plies lie askew [N·m]. */
  readonly D26: number;
  /** Mxy for the twist [N·m]. */
  readonly D66: number;
  /** Shear stiffness, or "rigid": a thin plate without shear (Kirchhoff). */
  readonly shear: PanelShear | "rigid";
  /** Mass for each square metre [kg/m²]. */
  readonly massPerArea: number;
  /** Remarks on the result, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** How the shear stiffness of a stack is taken. */
export interface ShearModel {
  /** Which layer is the core, counted from 0 at the mould, or "none"; found if not given. */
  readonly core?: number | "none";
  /** Shear factor of a stack said to be without a core, core "none"; 5/6 if not given [1]. */
  readonly shearFactor?: number;
}

/** Below this share of 5/6 Σ G t the plies are not alike: some are far softer in shear. */
const SOFT_LAYERS = 0.5;

/** Coupling of stretching and bending below this share counts as none: rounding. */
const COUPLING_IS_ROUNDING = 1e-9;

/**
 * Bending and shear stiffness of a panel made of any stack.
 *
 * Formula: D of classical lamination theory, the core a ply like any other; with a core
 * S55 = Gxz d²/c, S44 = Gyz d²/c, S45 = Gxyz d²/c, d between the middles of the faces. Where no
 * one layer is the core, `transverseShearStiffness`: 5/6 G h for a sheet of one material; two
 * sheets of foam on each other count as one core, and a note says so. For core "none"
 * S = k Σ G t, k = 5/6, which soft layers would make far too stiff. A stack that is not symmetric
 * bends with D − B A⁻¹ B.
 *
 * Range: symmetric stacks. For others D − B A⁻¹ B takes the edges as free to slide in the plane;
 * held edges are stiffer, so that deflection is not underrated; a note says so.
 *
 * Source: Allen (1969) for S; the reduced stiffness: J. E. Ashton, J. Compos. Mater. 3 (1969)
 * 698; both from memory. No further shear correction factor with a core.
 *
 * @param stack Plies and core, mould side first.
 * @param model Which layer is the core; the shear factor of a solid laminate.
 * @returns D [N·m], S [N/m], mass for each area [kg/m²].
 * @throws {InputError} If a ply cannot be meant, or the core named is not a layer inside.
 *
 * @example
 * ```ts
 * import { panelStiffness } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sheet = {
 *   name: "sheet", E1: 70e9, E2: 70e9, G12: 26e9, nu12: 0.3, G13: 26e9, G23: 26e9,
 *   density: 2700, alpha1: 23e-6, alpha2: 23e-6,
 * };
 * const { D11 } = panelStiffness([{ lamina: sheet, thickness: 0.002, angleDeg: 0 }]);
 * assertAlmostEquals(D11, 70e9 * 0.002 ** 3 / (12 * (1 - 0.09)), 1e-9);
 * ```
 */
export function panelStiffness(stack: Stack, model: ShearModel = {}): PanelStiffness {
  checkPlies(check, stack, 1);
  check.object("shear model", model);
  const laminate = laminateStiffness(stack);
  const { D, notes } = bendingStiffness(laminate);
  const shear = shearStiffness(stack, model);
  return Object.freeze({
    ...D,
    shear: shear.S,
    massPerArea: massPerArea(stack),
    notes: [...notes, ...shear.notes],
  });
}

/**
 * Stiffness of an isotropic panel, thick or thin.
 *
 * Formula: D = E h³/(12 (1 − ν²)), D66 = (1 − ν)/2 D; S = 5/6 G h, or "rigid" for a thin plate
 *
 * Range: ν from −0.99 to 0.5.
 *
 * Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells; Reissner for 5/6.
 *
 * @param sheet Modulus [Pa], Poisson ratio [1], thickness [m], density [kg/m³].
 * @param shear Whether shear counts.
 * @returns D [N·m], S [N/m], mass for each area [kg/m²].
 * @throws {InputError} If a modulus, thickness or density is not above 0, or ν out of range.
 *
 * @example
 * ```ts
 * import { isotropicPanel } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const sheet = { E: 70e9, nu: 0.3, thickness: 0.002, density: 2700 };
 * assertAlmostEquals(isotropicPanel(sheet, "rigid").D12 / isotropicPanel(sheet).D11, 0.3, 1e-15);
 * ```
 */
export function isotropicPanel(
  sheet: {
    /** Young's modulus [Pa]. */
    readonly E: number;
    /** Poisson ratio [1]. */
    readonly nu: number;
    /** Thickness [m]. */
    readonly thickness: number;
    /** Density [kg/m³]. */
    readonly density: number;
  },
  shear: "counted" | "rigid" = "counted",
): PanelStiffness {
  check.object("sheet", sheet);
  const E = check.positive("modulus", sheet.E, "Pa");
  const nu = check.within("Poisson ratio", sheet.nu, { min: -0.99, max: 0.5 });
  const h = check.positive("thickness", sheet.thickness, "m");
  check.oneOf("shear", shear, ["counted", "rigid"]);
  const D = check.result("D", E * h ** 3 / (12 * (1 - nu * nu)), "N·m");
  const S = 5 / 6 * E / (2 * (1 + nu)) * h;
  return Object.freeze({
    D11: D,
    D12: nu * D,
    D16: 0,
    D22: D,
    D26: 0,
    D66: (1 - nu) / 2 * D,
    shear: shear === "rigid" ? "rigid" : { S44: S, S45: 0, S55: S },
    massPerArea: check.positive("density", sheet.density, "kg/m³") * h,
    notes: [],
  });
}

type Bending = Pick<PanelStiffness, "D11" | "D12" | "D16" | "D22" | "D26" | "D66">;

/** D, or D − B A⁻¹ B where stretching and bending are coupled. */
function bendingStiffness(
  laminate: LaminateStiffness,
): { readonly D: Bending; readonly notes: readonly string[] } {
  const { D11, D12, D16, D22, D26, D66 } = laminate;
  const { B11, B12, B16, B22, B26, B66 } = laminate;
  const B = [B11, B12, B16, B12, B22, B26, B16, B26, B66];
  const size = Math.sqrt(
    Math.max(laminate.A11, laminate.A22) * Math.max(laminate.D11, laminate.D22),
  );
  if (B.every((entry) => Math.abs(entry) <= COUPLING_IS_ROUNDING * size)) {
    return { D: { D11, D12, D16, D22, D26, D66 }, notes: [] };
  }
  const { A11, A12, A16, A22, A26, A66 } = laminate;
  const a = inverse3([A11, A12, A16, A12, A22, A26, A16, A26, A66]);
  const [R11 = 0, R12 = 0, R16 = 0, , R22 = 0, R26 = 0, , , R66 = 0] = multiply(
    B,
    multiply(a, B, 3),
    3,
  );
  return {
    D: {
      D11: D11 - R11,
      D12: D12 - R12,
      D16: D16 - R16,
      D22: D22 - R22,
      D26: D26 - R26,
      D66: D66 - R66,
    },
    notes: [
      "the stack is not symmetric: bending stiffness D − B A⁻¹ B, edges free to slide in the plane",
    ],
  };
}

/** Shear stiffness, and what there is to say about how it was taken. */
interface Shear {
  readonly S: PanelShear;
  readonly notes: readonly string[];
}

function shearStiffness(stack: Stack, model: ShearModel): Shear {
  const { core, shearFactor } = model;
  const factor = check.within("shear factor", shearFactor ?? 5 / 6, { min: 0.01, max: 1 });
  if (core === "none") return { S: sumOfPlies(stack, factor), notes: [] };
  const found = core ?? findCore(stack);
  if (found === undefined) {
    if (shearFactor !== undefined) {
      check.refuse("shear factor", shearFactor, 'must come with core "none"');
    }
    return byEquilibrium(stack);
  }
  const index = coreIndexOf(check, stack, found);
  const layer = stack[index] as Ply;
  const c = layer.thickness;
  const d = c + (laminateThickness(stack) - c) / 2;
  const { Gxz, Gyz, Gxy } = transverseModuli(layer);
  const share = d * d / c;
  return { S: { S44: Gyz * share, S45: Gxy * share, S55: Gxz * share }, notes: [] };
}

function sumOfPlies(stack: Stack, factor: number): PanelShear {
  return stack.reduce((sum, ply) => {
    const { Gxz, Gyz, Gxy } = transverseModuli(ply);
    const t = factor * ply.thickness;
    return { S44: sum.S44 + Gyz * t, S45: sum.S45 + Gxy * t, S55: sum.S55 + Gxz * t };
  }, { S44: 0, S45: 0, S55: 0 });
}

function byEquilibrium(stack: Stack): Shear {
  const { S44, S45, S55 } = transverseShearStiffness(stack);
  const { S44: full44, S55: full55 } = sumOfPlies(stack, 5 / 6);
  const soft = Math.min(S44 / full44, S55 / full55) < SOFT_LAYERS;
  return {
    S: { S44, S45, S55 },
    notes: soft
      ? ["no one layer is the core, but soft ones are inside: shear stiffness by equilibrium"]
      : [],
  };
}
