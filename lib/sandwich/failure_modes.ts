import { checksFor } from "../check/mod.ts";
import { checkDesign } from "./_check_design.ts";
import { GROUNDS, type SandwichFailureName } from "./_failure_grounds.ts";
import { type BeamSection, sandwichSection } from "./beam_section.ts";
import { bendingStress, coreShearStress } from "./beam_stress.ts";
import {
  dimplingStress,
  honeycombWrinklingFactors,
  honeycombWrinklingStress,
  wrinklingFactors,
  wrinklingStress,
} from "./face_stability.ts";
import { patchSpread } from "./local_load.ts";
import type { FaceDesign, SandwichDesign } from "./sandwich_design.ts";

const check = checksFor("find what gives first");

export type { SandwichFailureName };

/** What acts on a place of a sandwich, for each metre of width. */
export interface SandwichDemand {
  /** Moment bending along x, sagging positive; 0 if not given [N]. */
  readonly Mx?: number;
  /** Moment bending along y, sagging positive; 0 if not given [N]. */
  readonly My?: number;
  /** Twisting moment, of either sign; 0 if not given [N]. */
  readonly Mxy?: number;
  /** Shear force on the face across x; 0 if not given [N/m]. */
  readonly Qx?: number;
  /** Shear force on the face across y; 0 if not given [N/m]. */
  readonly Qy?: number;
  /** Compression in the plane along x, on both faces together; 0 if not given [N/m]. */
  readonly compressionX?: number;
  /** Compression in the plane along y, on both faces together; 0 if not given [N/m]. */
  readonly compressionY?: number;
  /** A force on a patch of the top face: force [N], sides [m]. */
  readonly patch?: {
    /** Force in all [N]. */
    readonly force: number;
    /** Side along x [m]. */
    readonly lengthX: number;
    /** Side along y [m]. */
    readonly lengthY: number;
  };
}

/** One way to give, with how far off it is. */
export interface SandwichFailure {
  /** Which way. */
  readonly mode: SandwichFailureName;
  /** Direction and place, for tables. */
  readonly where: string;
  /** Stress that acts, a positive magnitude [Pa]; of crimping the force [N/m]. */
  readonly demand: number;
  /** Stress that it stands [Pa]; of crimping the force [N/m]. */
  readonly limit: number;
  /** The loads given times this bring it about [1]. */
  readonly reserve: number;
  /** Where the formula comes from. */
  readonly source: string;
  /** How far real panels scatter about it: common practice, no source. */
  readonly scatter: string;
}

/**
 * What gives first at one place of a sandwich: every way to give, the nearest first. All grow
 * with the load, so that the reserve is the factor on all loads together.
 *
 * Formula: faces σ = ±M E z/D against strength, wrinkling and dimpling (compression at the middle
 * of the face); face shear τ = Mxy z/J, J = d² t1 t2/(t1 + t2) + (t1³ + t2³)/12; crimping N
 * against G d²/c; core shear with both directions as √((τx/Sx)² + (τy/Sy)²); core crushing under
 * a patch, punching F/(2(u + v) d)
 *
 * Range: as each formula; wrinkling by the design factor, honeycomb by its own form; face shear
 * for faces alike in shear modulus, and each stress of a face alone against its strength. Not
 * counted: wrinkling from twist, buckling of the panel (`panelBuckling`), bond, edges and inserts,
 * fatigue, impact, water.
 *
 * Source: named in each result.
 *
 * @param design Faces and core with what they stand.
 * @param demand Moments [N], forces [N/m] and a patch that act there.
 * @returns Ways to give, the smallest reserve first; those that nothing acts on left out.
 * @throws {InputError} If a thickness, modulus or strength is not above 0, or a load is no number.
 *
 * @example
 * ```ts
 * import { balancedFace, failureModes } from "@laminate/notebooks/sandwich";
 * import { assertEquals } from "@std/assert";
 *
 * const face = balancedFace({
 *   thickness: 1e-3, E: 20e9, nu: 0.1, tensile: 3e8, compressive: 2e8, shear: 4e7,
 * });
 * const core = {
 *   kind: "foam", thickness: 0.01, Ex: 6e7, Ey: 6e7, Ez: 6e7, Gx: 2e7, Gy: 2e7, shearX: 8e5,
 *   shearY: 8e5, compressive: 9e5, cellSize: 0,
 * } as const;
 * const [first] = failureModes({ topFace: face, bottomFace: face, core }, { Mx: 500, Qx: 5000 });
 * assertEquals(first!.mode, "core shear");
 * ```
 */
export function failureModes(
  design: SandwichDesign,
  demand: SandwichDemand,
): readonly SandwichFailure[] {
  checkDesign(check, design);
  check.object("demand", demand);
  const { Mx = 0, My = 0, Mxy = 0, Qx = 0, Qy = 0, compressionX = 0, compressionY = 0 } = demand;
  const acting = { Mx, My, Mxy, Qx, Qy, compressionX, compressionY };
  for (const [name, value] of Object.entries(acting)) check.finite(name, value);
  const found: SandwichFailure[] = [
    ...faceModes(design, { direction: "x", moment: Mx, compression: compressionX }),
    ...faceModes(design, { direction: "y", moment: My, compression: compressionY }),
    ...faceShearModes(design, Math.abs(Mxy)),
    ...coreShearModes(design, Qx, Qy),
    ...(demand.patch === undefined ? [] : patchModes(design, demand.patch)),
  ];
  return Object.freeze(found.sort((a, b) => a.reserve - b.reserve));
}

type Direction = "x" | "y";

function modeOf(
  mode: SandwichFailureName,
  where: string,
  [demand, limit]: readonly [number, number],
): readonly SandwichFailure[] {
  if (!(demand > 0)) return [];
  const [source, scatter] = GROUNDS[mode];
  const reserve = limit / check.result(`demand of ${mode}`, demand, "Pa");
  if (!Number.isFinite(reserve)) return [];
  return [Object.freeze({ mode, where, demand, limit, reserve, source, scatter })];
}

/** The section of a strip of width 1 along a direction. */
function stripOf({ topFace, bottomFace, core }: SandwichDesign, along: Direction): BeamSection {
  const key = along === "x" ? "Ex" : "Ey";
  return sandwichSection({
    width: 1,
    topFace: { thickness: topFace.thickness, E: topFace[key] },
    bottomFace: { thickness: bottomFace.thickness, E: bottomFace[key] },
    core: { thickness: core.thickness, E: core[key], G: along === "x" ? core.Gx : core.Gy },
  });
}

/** Faces along one direction: strength, wrinkling, dimpling; crimping of both together. */
function faceModes(
  design: SandwichDesign,
  { direction, moment, compression }: {
    readonly direction: Direction;
    readonly moment: number;
    readonly compression: number;
  },
): readonly SandwichFailure[] {
  const section = stripOf(design, direction);
  const bending = bendingStress(section, moment);
  const key = direction === "x" ? "Ex" : "Ey";
  // Compression in the plane is shared by axial stiffness, the core's part left to the faces.
  const stiffness = design.topFace[key] * design.topFace.thickness +
    design.bottomFace[key] * design.bottomFace.thickness;
  const found = (["top", "bottom"] as const).flatMap((side) => {
    const face = side === "top" ? design.topFace : design.bottomFace;
    const stress = side === "top" ? bending.topFace : bending.bottomFace;
    const direct = -compression * face[key] / stiffness;
    const where = `${side} face along ${direction}`;
    const [outer, centroid] = [stress.outer + direct, stress.centroid + direct];
    const [tensile, compressive] = direction === "x"
      ? [face.tensileX, face.compressiveX]
      : [face.tensileY, face.compressiveY];
    return [
      ...modeOf("face tension", where, [outer, tensile]),
      ...modeOf("face compression", where, [-outer, compressive]),
      ...modeOf("wrinkling", where, [-centroid, wrinklingOf(design, face, direction)]),
      ...(design.core.cellSize > 0
        ? modeOf("dimpling", where, [
          -centroid,
          dimplingStress({
            faceE: face[key],
            faceNu: face.nu,
            thickness: face.thickness,
            cellSize: design.core.cellSize,
          }),
        ])
        : []),
    ];
  });
  const crimping = section.shearStiffness === "rigid" ? [] : modeOf(
    "crimping",
    `along ${direction}`,
    [compression, section.shearStiffness],
  );
  return [...found, ...crimping];
}

function wrinklingOf({ core }: SandwichDesign, face: FaceDesign, direction: Direction): number {
  const faceE = direction === "x" ? face.Ex : face.Ey;
  return core.kind === "honeycomb"
    ? honeycombWrinklingStress({
      faceE,
      coreE: core.Ez,
      faceThickness: face.thickness,
      coreThickness: core.thickness,
    }, honeycombWrinklingFactors.design)
    : wrinklingStress(
      { faceE, coreE: core.Ez, coreG: direction === "x" ? core.Gx : core.Gy },
      wrinklingFactors.design,
    );
}

/** Shear in the plane of each face by a twisting moment, at its outer fibre. */
function faceShearModes(
  { topFace, bottomFace, core }: SandwichDesign,
  twist: number,
): readonly SandwichFailure[] {
  const [t1, t2] = [topFace.thickness, bottomFace.thickness];
  const d = core.thickness + (t1 + t2) / 2;
  const J = d * d * t1 * t2 / (t1 + t2) + (t1 ** 3 + t2 ** 3) / 12;
  return [
    ...modeOf("face shear", "top face, by twist", [
      twist * (d * t2 / (t1 + t2) + t1 / 2) / J,
      topFace.shearXY,
    ]),
    ...modeOf("face shear", "bottom face, by twist", [
      twist * (d * t1 / (t1 + t2) + t2 / 2) / J,
      bottomFace.shearXY,
    ]),
  ];
}

/** Shear of the core both ways at once. */
function coreShearModes(
  design: SandwichDesign,
  Qx: number,
  Qy: number,
): readonly SandwichFailure[] {
  const { shearX, shearY } = design.core;
  const tauX = coreShearStress(stripOf(design, "x"), Math.abs(Qx)).max;
  const tauY = coreShearStress(stripOf(design, "y"), Math.abs(Qy)).max;
  const utilisation = Math.hypot(tauX / shearX, tauY / shearY);
  // Given as stress in the direction of the larger share, with the strength scaled to match.
  const demand = tauX / shearX >= tauY / shearY ? tauX : tauY;
  const where = Qy === 0 ? "along x" : Qx === 0 ? "along y" : "along x and y together";
  return utilisation === 0 ? [] : modeOf("core shear", where, [demand, demand / utilisation]);
}

function patchModes(
  design: SandwichDesign,
  patch: NonNullable<SandwichDemand["patch"]>,
): readonly SandwichFailure[] {
  const { topFace, core } = design;
  check.object("patch", patch);
  const force = check.nonNegative("force of the patch", patch.force, "N");
  const u = check.positive("side of the patch along x", patch.lengthX, "m");
  const v = check.positive("side of the patch along y", patch.lengthY, "m");
  const spread = patchSpread({
    faceE: u <= v ? topFace.Ex : topFace.Ey,
    faceThickness: topFace.thickness,
    coreE: core.Ez,
    coreG: u <= v ? core.Gx : core.Gy,
    coreThickness: core.thickness,
  }, Math.min(u, v));
  const d = core.thickness + (topFace.thickness + design.bottomFace.thickness) / 2;
  return [
    ...modeOf("core crushing", "under the patch", [force / (u * v) * spread, core.compressive]),
    ...modeOf("punching", "round the patch", [
      force / (2 * (u + v) * d),
      Math.min(core.shearX, core.shearY),
    ]),
  ];
}
