import { checksFor } from "../check/mod.ts";
import type { Range, ReinforcementForm } from "../materials/mod.ts";

const check = checksFor("look up the usual fibre fraction");

/** Ways of laying up: by hand, by hand and bagged, dry under vacuum and infused. */
export type LayupProcess = "hand" | "bagged" | "infused";

/** The processes, the least pressure first. */
export const LAYUP_PROCESSES: readonly LayupProcess[] = Object.freeze([
  "hand",
  "bagged",
  "infused",
]);

const FORMS: readonly ReinforcementForm[] = ["unidirectional", "woven", "stitched", "mat"];

/** Fibre volume fraction that is usual for a process and a form of reinforcement [1]. */
export interface UsualBand extends Range {
  /** Where the band comes from. */
  readonly source: string;
}

const PRACTICE = "common practice, no source";
const BESIDE_ISO = "common practice, no source; set beside the default glass contents of " +
  "ISO 12215-5:2008 annex C (0.30 by mass for mat, 0.48 for roving, by hand), from memory";

const band = (low: number, high: number, source = PRACTICE): UsualBand => ({ low, high, source });

/** Usual fibre volume fractions by process and form [1]. */
export const USUAL_BANDS: Readonly<
  Record<LayupProcess, Readonly<Record<ReinforcementForm, UsualBand>>>
> = Object.freeze({
  hand: {
    unidirectional: band(0.35, 0.5),
    woven: band(0.3, 0.45, BESIDE_ISO),
    stitched: band(0.32, 0.48),
    mat: band(0.13, 0.2, BESIDE_ISO),
  },
  bagged: {
    unidirectional: band(0.48, 0.6),
    woven: band(0.42, 0.55),
    stitched: band(0.45, 0.56),
    mat: band(0.18, 0.26),
  },
  infused: {
    unidirectional: band(0.5, 0.62),
    woven: band(0.45, 0.57),
    stitched: band(0.47, 0.6),
    mat: band(0.2, 0.3),
  },
});

/** How much of the fibre has which form. */
export interface FibreOfForm {
  /** Form of the reinforcement. */
  readonly form: ReinforcementForm;
  /** Volume of its fibre, in any unit: only the proportions count [m³]. */
  readonly fibreVolume: number;
}

/**
 * The fibre volume fraction that is usual for a lay-up of several forms and a process: each form's
 * layers as thick as its own band makes them.
 *
 * Formula: Vf = ΣVi/Σ(Vi/Vf,i), at the low and the high end of each form's band
 *
 * Range: bands of practice, not limits; a careful crew can be outside.
 *
 * Source: `USUAL_BANDS`; mass balance.
 *
 * @param process How the part is laid up.
 * @param fibres Fibre volumes by form.
 * @returns Low and high of the fibre volume fraction [1], with the source.
 * @throws {InputError} If the process or a form is not known, or a volume is not above 0.
 *
 * @example
 * ```ts
 * import { usualFibreFraction } from "@laminate/notebooks/constituents";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const band = usualFibreFraction("hand", [
 *   { form: "woven", fibreVolume: 1 },
 *   { form: "mat", fibreVolume: 1 },
 * ]);
 * assertAlmostEquals(band.low, 2 / (1 / 0.3 + 1 / 0.13), 1e-12);
 * ```
 */
export function usualFibreFraction(
  process: LayupProcess,
  fibres: readonly FibreOfForm[],
): UsualBand {
  const bands = USUAL_BANDS[check.oneOf("process", process, LAYUP_PROCESSES)];
  check.list("fibres", fibres);
  let volume = 0, lowThickness = 0, highThickness = 0;
  const sources = new Set<string>();
  for (const entry of fibres) {
    const { form, fibreVolume } = check.object("fibre", entry);
    const { low, high, source } = bands[check.oneOf("form", form, FORMS)];
    check.positive("fibre volume", fibreVolume, "m³");
    volume += fibreVolume;
    lowThickness += fibreVolume / low;
    highThickness += fibreVolume / high;
    sources.add(source);
  }
  return {
    low: volume / lowThickness,
    high: volume / highThickness,
    source: [...sources].join("; "),
  };
}
