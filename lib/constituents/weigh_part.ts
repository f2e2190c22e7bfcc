import { checksFor } from "../check/mod.ts";
import { type Propagated, propagateTogether } from "../statistics/mod.ts";
import { partBalance, resinForFraction } from "./part_balance.ts";
import type { PartWeighing } from "./part_weighing.ts";
import { type UsualBand, usualFibreFraction } from "./usual_bands.ts";
import { doubtsOf, type WeighingVerdict } from "./_weighing_doubts.ts";
import {
  checkWeighing,
  clothVolumes,
  laminateHolds,
  massesAt,
  namedInputs,
  scaleCorrelations,
} from "./_weighing_inputs.ts";

export type { WeighingVerdict };

const check = checksFor("read the weighing");

/** What a weighing says, each figure with its uncertainty and budget. */
export interface WeighedPart {
  /** Whether the weighing can be believed. */
  readonly verdict: WeighingVerdict;
  /** What is doubtful, and what slip would explain it; also where the part lies in its band. */
  readonly notes: readonly string[];
  /** Dry mass of the fibre in the part [kg]. */
  readonly fibreMass: Propagated<string>;
  /** All resin in the part, the core's share included [kg]. */
  readonly resinMass: Propagated<string>;
  /** Resin of the laminate alone [kg]. */
  readonly laminateResin: Propagated<string>;
  /** Resin of the laminate over fibre, by mass; negative shows a mistake [1]. */
  readonly resinRatio: Propagated<string>;
  /** Fibre mass over laminate mass; null where the masses leave no laminate [1]. */
  readonly fibreMassFraction: Propagated<string> | null;
  /** Fibre volume over laminate volume, void-free; null where the masses leave none [1]. */
  readonly fibreVolumeFraction: Propagated<string> | null;
  /** Thickness of all laminate (both faces), void-free; null where the masses leave none [m]. */
  readonly laminateThickness: Propagated<string> | null;
  /** Resin beyond the fraction aimed at; negative is short of it [kg]. */
  readonly surplusResin: Propagated<string>;
  /** The fibre volume fraction aimed at [1]. */
  readonly targetFibreVolumeFraction: number;
  /** The band usual for this cloth and process [1]. */
  readonly usualBand: UsualBand;
}

/**
 * What resin ratio did we get? The weighing method for a part with or without core, with the
 * uncertainty of scale, area and cloth carried through, and with the weighing itself judged: a
 * part that cannot be is called a mistake, with the slips that would explain it; nothing is
 * clipped.
 *
 * Formula: `partBalance`; fibre mass Σ n w A s or the dry cloth less what was trimmed off;
 * u² = Σ(∂f/∂x u)² (GUM)
 *
 * Range: void-free; cloth whose areal weight is off by more than its u misleads.
 *
 * Source: mass balance; JCGM 100:2008 for the uncertainty; bands `USUAL_BANDS`.
 *
 * @param weighing Masses, area, cloths and resin, each with its standard uncertainty.
 * @returns Verdict, notes, and each figure with u, U (k = 2) and budget.
 * @throws {InputError} If an input is not a value with uncertainty or is out of range.
 *
 * @example A hand-laid sandwich panel of half a square metre
 * ```ts
 * import { weighPart } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals, assertEquals } from "@std/assert";
 *
 * const part = weighPart({
 *   partMass: { value: 1.215, u: 0.001 },
 *   coreMass: { value: 0.4, u: 0.001 },
 *   area: { value: 0.5, u: 0.002 },
 *   layers: [{
 *     cloth: "glass twill 200",
 *     fibre: "E-glass",
 *     form: "woven",
 *     arealWeight: { value: 0.2, u: 0.005 },
 *     fibreDensity: { value: 2560, u: 15 },
 *     count: 4,
 *   }],
 *   resinDensity: { value: 1150, u: 10 },
 * });
 * assertAlmostEquals(part.resinRatio.value, 0.415 / 0.4, 1e-9);
 * assertEquals(part.verdict, "plausible");
 * ```
 */
export function weighPart(weighing: PartWeighing): WeighedPart {
  checkWeighing(check, weighing);
  const volumes = clothVolumes(weighing);
  const usualBand = usualFibreFraction(weighing.process ?? "hand", volumes);
  const target = weighing.targetFibreVolumeFraction ?? (usualBand.low + usualBand.high) / 2;
  const inputs = namedInputs(weighing);
  const options = { correlations: scaleCorrelations(weighing) };

  const { results } = propagateTogether(
    (values) => {
      const masses = massesAt(weighing, values);
      const { partMass, coreMass, otherMass, coreResin, fibreMass, fibreVolume } = masses;
      const resinMass = partMass - coreMass - otherMass - fibreMass;
      const laminateResin = resinMass - coreResin;
      return {
        fibreMass,
        resinMass,
        laminateResin,
        resinRatio: laminateResin / fibreMass,
        surplusResin: laminateResin -
          resinForFraction(fibreVolume, target, masses.resinDensity),
      };
    },
    inputs,
    options,
  );
  const fractions = laminateHolds(weighing)
    ? propagateTogether(
      (values) => {
        const { fibreMassFraction, fibreVolumeFraction, laminateVolume } = partBalance(
          massesAt(weighing, values),
        );
        const laminateThickness = laminateVolume / values["area"]!;
        return { fibreMassFraction, fibreVolumeFraction, laminateThickness };
      },
      inputs,
      options,
    ).results
    : { fibreMassFraction: null, fibreVolumeFraction: null, laminateThickness: null };

  const figures = { ...results, ...fractions, usualBand };
  return { ...doubtsOf(weighing, figures), ...figures, targetFibreVolumeFraction: target };
}
