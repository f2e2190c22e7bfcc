import { checksFor } from "../check/mod.ts";

const check = checksFor("check the layout of the holes");

/** Where holes lie. */
export interface HoleLayout {
  /** What is drilled. */
  readonly material: "laminate" | "metal";
  /** Diameter of the hole [m]. */
  readonly holeDiameter: number;
  /** Thickness that carries [m]. */
  readonly thickness: number;
  /** From the centre to the edge in the direction of the load [m]. */
  readonly edgeDistance: number;
  /** From the centre to the side edge, across the load [m]. */
  readonly sideDistance: number;
  /** Centre to centre across the load; none for a single bolt [m]. */
  readonly pitch?: number;
}

/** One piece of guidance and whether the layout keeps it. */
export interface HoleGuidance {
  /** What is compared. */
  readonly what: "edge distance" | "side distance" | "pitch" | "hole to thickness";
  /** The layout's figure, over the hole's diameter (or the hole's diameter over thickness) [1]. */
  readonly ratio: number;
  /** Smallest that is advised for a laminate; smallest that the code allows for metal [1]. */
  readonly least: number;
  /** Largest that is advised, if any [1]. */
  readonly most?: number;
  /** Whether it is kept. */
  readonly kept: boolean;
  /** Whose advice it is, or which code's smallest. */
  readonly source: string;
}

interface Advice {
  readonly what: HoleGuidance["what"];
  readonly least: number;
  readonly most?: number;
  readonly source: string;
}

const SPECIMEN = "proportions of the bearing specimen of ASTM D5961 (e/d 3, w/d 6), from memory";
const EUROCODE = "EN 1993-1-8, table 3.3, the smallest allowed and no advice, from memory";
const PRACTICE = "common practice, no source";

const ADVICE: Readonly<Record<HoleLayout["material"], readonly Advice[]>> = {
  laminate: [
    { what: "edge distance", least: 3, source: SPECIMEN },
    { what: "side distance", least: 3, source: SPECIMEN },
    { what: "pitch", least: 5, source: PRACTICE },
    { what: "hole to thickness", least: 1, most: 3, source: PRACTICE },
  ],
  metal: [
    { what: "edge distance", least: 1.2, source: EUROCODE },
    { what: "side distance", least: 1.2, source: EUROCODE },
    { what: "pitch", least: 2.4, source: EUROCODE },
  ],
};

/** Slack for figures that meet the advice exactly but for rounding. */
const ROUNDING = 1e-9;

/**
 * Compares edge distance, side distance and pitch with published or usual proportions.
 *
 * Formula: e/d, s/d, p/d, d/t
 *
 * Range: guidance for choosing a layout; `boltedReserve` says whether it carries. For metal the
 * figures are the least that the code allows, at which the bolt carries less than farther in: a good
 * layout keeps more.
 *
 * Source: beside each piece of guidance in the result.
 *
 * @param layout Hole, thickness and distances [m].
 * @returns One entry for each piece of guidance.
 * @throws {InputError} If a size is not above 0 or the material unknown.
 *
 * @example
 * ```ts
 * import { holeGuidance } from "@laminate/notebooks/joints";
 * import { assertEquals } from "@std/assert";
 *
 * const guidance = holeGuidance({
 *   material: "laminate", holeDiameter: 0.006, thickness: 0.003,
 *   edgeDistance: 0.015, sideDistance: 0.02,
 * });
 * assertEquals(guidance.filter(({ kept }) => !kept).map(({ what }) => what), ["edge distance"]);
 * ```
 */
export function holeGuidance(layout: HoleLayout): readonly HoleGuidance[] {
  check.object("layout", layout);
  check.oneOf("material", layout.material, ["laminate", "metal"]);
  const d = check.positive("hole diameter", layout.holeDiameter, "m");
  const ratios: Readonly<Record<HoleGuidance["what"], number | undefined>> = {
    "edge distance": check.positive("edge distance", layout.edgeDistance, "m") / d,
    "side distance": check.positive("side distance", layout.sideDistance, "m") / d,
    "pitch": layout.pitch === undefined
      ? undefined
      : check.positive("pitch", layout.pitch, "m") / d,
    "hole to thickness": d / check.positive("thickness", layout.thickness, "m"),
  };
  return ADVICE[layout.material].flatMap((advice): readonly HoleGuidance[] => {
    const ratio = ratios[advice.what];
    if (ratio === undefined) return [];
    const { least, most = Infinity } = advice;
    const kept = ratio >= least * (1 - ROUNDING) && ratio <= most * (1 + ROUNDING);
    return [check.results({ ...advice, ratio, kept })];
  });
}
