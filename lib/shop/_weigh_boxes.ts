import type { Mix } from "../filler/mod.ts";
import type { Batch } from "./batches.ts";
import type { CoreList } from "./core_sheets.ts";
import type { CutList } from "./cut_list.ts";
import type { ResinPlan } from "./resin_plan.ts";

/** A box of the sheet: something to weigh, what is expected, and where the figure goes. */
export interface WeighBox {
  /** What is put on the scale. */
  readonly what: string;
  /** Mass expected; none where there is no expectation [kg]. */
  readonly expected?: number;
  /** Column of the weighings file that takes it; none for a figure that is only checked. */
  readonly column?: "dry_cloth_mass" | "core_mass" | "part_mass";
}

/** The parts of a day's plan that are weighed. */
export interface WeighedPlan {
  /** What to cut from rolls. */
  readonly cloths: readonly CutList[];
  /** What to cut from core sheets. */
  readonly cores: readonly CoreList[];
  /** Resin of the day. */
  readonly resin: ResinPlan;
  /** The pots. */
  readonly pots: readonly (Batch & Pick<Mix, "resinMass" | "hardenerMass">)[];
}

/** Boxes for a day's weighings, in the order in which they are filled. */
export function weighBoxes({ cloths, cores, resin, pots }: WeighedPlan): readonly WeighBox[] {
  const cloth = cloths.reduce((sum, { pieceMass }) => sum + pieceMass, 0);
  const core = cores.reduce((sum, { mass }) => sum + mass, 0);
  return [
    { what: "all cut cloth, dry", expected: cloth, column: "dry_cloth_mass" },
    ...(cores.length === 0
      ? []
      : [{ what: "core as cut", expected: core, column: "core_mass" } as const]),
    ...pots.flatMap(({ number, resinMass, hardenerMass }): readonly WeighBox[] => [
      { what: `pot ${number}: resin`, expected: resinMass },
      { what: `pot ${number}: hardener`, expected: hardenerMass },
    ]),
    { what: "resin left over in pots" },
    {
      what: "finished part before trimming",
      expected: cloth + core + resin.inPart,
      column: "part_mass",
    },
  ];
}
