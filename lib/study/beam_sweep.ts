import { checksFor } from "../check/mod.ts";
import { type SweepFigures, sweepStrips, type SweepTable } from "./_beam_sweep_kernel.ts";

const check = checksFor("sweep the strips");

/** A cloth as the sweep needs it: one cured ply. */
export interface SweptPly {
  /** Cured thickness [m]. */
  readonly thickness: number;
  /** Mass for each area, fibre and resin [kg/m²]. */
  readonly massPerArea: number;
  /** Modulus along the strip [Pa]. */
  readonly E: number;
}

/** Lists of choices and what stays the same. */
export interface StripSweep {
  /** Cloths to try. */
  readonly cloths: readonly SweptPly[];
  /** Plies in each face to try. */
  readonly plies: readonly number[];
  /** Core thicknesses to try [m]. */
  readonly coreThicknesses: readonly number[];
  /** Spans to try [m]. */
  readonly spans: readonly number[];
  /** The core. */
  readonly core: {
    /** Density [kg/m³]. */
    readonly density: number;
    /** Modulus along the strip [Pa]. */
    readonly E: number;
    /** Modulus through the thickness [Pa]. */
    readonly Ez: number;
    /** Shear modulus [Pa]. */
    readonly G: number;
  };
  /** Mass of bond resin, both sides together [kg/m²]. */
  readonly bondMass: number;
  /** Pressure on the strip [Pa]. */
  readonly pressure: number;
  /** Factor k of wrinkling k (Ef Ec Gc)^⅓ [1]. */
  readonly wrinklingFactor: number;
  /** Largest face stress that will do [Pa]. */
  readonly faceStrength: number;
  /** Largest core shear stress that will do [Pa]. */
  readonly coreStrength: number;
}

/** Figures of all designs in one order: cloth, plies, core, span, the span changing fastest. */
export interface StripFigures {
  /** Mass for each area [kg/m²]. */
  readonly mass: Float64Array;
  /** Deflection at mid-span [m]. */
  readonly deflection: Float64Array;
  /** Face stress in the outer fibre, a magnitude [Pa]. */
  readonly faceStress: Float64Array;
  /** Core shear stress, simple form [Pa]. */
  readonly coreShear: Float64Array;
  /** Stress at which the face wrinkles [Pa]. */
  readonly wrinkling: Float64Array;
  /** 1 where a design keeps all limits and is on its span's front of mass against deflection. */
  readonly onFront: Uint8Array;
}

/** Which choices make the design at a place of the figures. */
export interface StripChoice {
  /** Place in the list of cloths. */
  readonly cloth: number;
  /** Place in the list of plies. */
  readonly plies: number;
  /** Place in the list of core thicknesses. */
  readonly core: number;
  /** Place in the list of spans. */
  readonly span: number;
}

/**
 * Computes every design of a sandwich strip on two simple supports under a pressure, and for each
 * span the trade-off front of mass and deflection among those that hold.
 *
 * Formula: per metre of width, equal faces: D = Ef t d²/2 + Ef t³/6 + Ec c³/12, S = G d²/c,
 * δ = 5qL⁴/384D + qL²/8S, σ = qL²/8 Ef (c/2 + t)/D, τ = qL/(2d), wrinkling k (Ef Ez G)^⅓
 *
 * Range: as `deflectBeam` and `sandwichSection`, of which it is the batch twin. The outer fibre is
 * held against strength and against wrinkling, the latter on the safe side: a face wrinkles by its
 * middle.
 *
 * Source: Allen (1969), chapter 2, from memory.
 *
 * @param choices Lists to try, and core, pressure and strengths.
 * @returns Figures of all designs, cloth by cloth, plies, core, span changing fastest.
 * @throws {InputError} If a list is empty or a number is not above 0.
 *
 * @example
 * ```ts
 * import { sweepStripDesigns } from "@laminate/notebooks/study";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { deflection } = sweepStripDesigns({
 *   cloths: [{ thickness: 2.5e-4, massPerArea: 0.33, E: 18e9 }],
 *   plies: [2],
 *   coreThicknesses: [0.01],
 *   spans: [0.5],
 *   core: { density: 80, E: 70e6, Ez: 70e6, G: 27e6 },
 *   bondMass: 0.3,
 *   pressure: 5000,
 *   wrinklingFactor: 0.5,
 *   faceStrength: 150e6,
 *   coreStrength: 0.5e6,
 * });
 * assertAlmostEquals(deflection[0]! * 1000, 8.625, 0.001);
 * ```
 */
export function sweepStripDesigns(choices: StripSweep): StripFigures {
  const table = checkedTable(choices);
  const { plyThickness, plies, coreThickness, spans } = table;
  const count = plyThickness.length * plies.length * coreThickness.length * spans.length;
  const figures: SweepFigures = {
    mass: new Float64Array(count),
    deflection: new Float64Array(count),
    faceStress: new Float64Array(count),
    coreShear: new Float64Array(count),
    wrinkling: new Float64Array(count),
    onFront: new Uint8Array(count),
  };
  sweepStrips(table, figures);
  for (const [name, list] of Object.entries(figures) as [string, Float64Array][]) {
    for (let i = 0; i < list.length; i++) {
      if (!Number.isFinite(list[i])) check.result(`${name} of design ${i + 1}`, list[i]!);
    }
  }
  return Object.freeze(figures);
}

/**
 * Which choices make the design at a place of the figures.
 *
 * Formula: place = ((cloth × plies + ply) × cores + core) × spans + span
 *
 * Source: definition.
 *
 * @param choices The sweep.
 * @param index Place of the design.
 * @returns Places in the four lists.
 * @throws {InputError} If there is no such design.
 *
 * @example
 * ```ts
 * import { stripChoice } from "@laminate/notebooks/study";
 * import { assertEquals } from "@std/assert";
 *
 * const ply = { thickness: 1, massPerArea: 1, E: 1 };
 * const lists = { cloths: [ply, ply], plies: [1], coreThicknesses: [1, 2], spans: [1, 2, 3] };
 * assertEquals(stripChoice(lists, 10), { cloth: 1, plies: 0, core: 1, span: 1 });
 * ```
 */
export function stripChoice(
  choices: Pick<StripSweep, "cloths" | "plies" | "coreThicknesses" | "spans">,
  index: number,
): StripChoice {
  check.object("choices", choices);
  const lengths = [choices.plies, choices.coreThicknesses, choices.spans].map((list) =>
    check.list("list", list).length
  );
  const [P = 1, K = 1, S = 1] = lengths;
  const last = check.list("cloths", choices.cloths).length * P * K * S - 1;
  check.count("place of the design", index);
  check.within("place of the design", index, { min: 0, max: last });
  return {
    cloth: Math.floor(index / (P * K * S)),
    plies: Math.floor(index / (K * S)) % P,
    core: Math.floor(index / S) % K,
    span: index % S,
  };
}

function checkedTable(choices: StripSweep): SweepTable {
  check.object("choices", choices);
  const { cloths, core } = choices;
  check.list("cloths", cloths);
  check.object("core", core);
  cloths.forEach((cloth, i) => check.object(`cloth ${i + 1}`, cloth));
  const list = (name: string, values: readonly number[], unit?: string): Float64Array => {
    check.list(name, values);
    values.forEach((value, i) => check.positive(`${name} ${i + 1}`, value, unit));
    return Float64Array.from(values);
  };
  return {
    plyThickness: list("ply thickness", cloths.map(({ thickness }) => thickness), "m"),
    plyMass: list("ply mass", cloths.map(({ massPerArea }) => massPerArea), "kg/m²"),
    faceE: list("ply modulus", cloths.map(({ E }) => E), "Pa"),
    plies: list("plies", choices.plies),
    coreThickness: list("core thickness", choices.coreThicknesses, "m"),
    spans: list("span", choices.spans, "m"),
    coreDensity: check.positive("core density", core.density, "kg/m³"),
    coreE: check.nonNegative("core modulus", core.E, "Pa"),
    coreEz: check.positive("core modulus through the thickness", core.Ez, "Pa"),
    coreG: check.positive("core shear modulus", core.G, "Pa"),
    bondMass: check.nonNegative("bond mass", choices.bondMass, "kg/m²"),
    pressure: check.positive("pressure", choices.pressure, "Pa"),
    wrinklingFactor: check.positive("wrinkling factor", choices.wrinklingFactor),
    faceStrength: check.positive("face strength", choices.faceStrength, "Pa"),
    coreStrength: check.positive("core strength", choices.coreStrength, "Pa"),
  };
}
