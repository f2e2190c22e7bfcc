import { checksFor } from "../check/mod.ts";
import type { LaminaStrengths, Reinforcement } from "../materials/mod.ts";
import { formFactors } from "./form_factors.ts";
import type { FibreResinMix } from "./lamina_of_fibres.ts";
import { transverseStrengthsCrowded } from "./transverse_strength.ts";

const check = checksFor("estimate the strengths of a ply");

/**
 * What a hand-laid ply keeps of the resin's tensile strength across the fibres: bond, small voids
 * and cure stress; estimate of this project, set beside the 35 to 48 MPa measured on
 * glass and carbon plies by Soden, Hinton and Kaddour (1998) [1].
 */
export const BOND_FACTOR = 0.7;

/** Share of a mat's fibres that count for a pull in one direction: the 3/8 of its modulus [1]. */
const RANDOM_SHARE = 3 / 8;

/**
 * Strain in compression below which a fibre counts as weak: aramid kinks at some 0.3 %, stretched
 * polyethylene at 0.1 %; flax laminates, from 0.45 %, still reach what the resin bears, glass and
 * carbon far more. Common practice, no source [1].
 */
const WEAK_STRAIN = 0.004;

/** A mix and the reinforcement that carries its fibre. */
export interface ReinforcedMix extends FibreResinMix {
  /** Form, weave and warp share of the reinforcement. */
  readonly reinforcement: Pick<Reinforcement, "form" | "weave" | "warpShare">;
}

/**
 * Strengths of a cured ply, estimated: fibres count only in their own direction, with a
 * knock-down for crimp; where few fibres run, the resin decides.
 *
 * An estimate for choosing between lay-ups, not an allowable: coupon strengths scatter and
 * hand-laid parts scatter more. Test coupons of your own before a part on which someone depends.
 *
 * Formula: Xt = s Vf Xf k, not below the resin's Yt; likewise Xc, and with 1 − s for Yt, Yc; where
 * the fibre gives in compression below a strain of 0.4 % (aramid, polyethylene) the resin counts
 * for 1 − s only, at least with its stress at that strain, since the fibres kink before it bears;
 * across the fibres Chamis' crowded resin, Yt × 0.7; S the crowded resin's shear. A mat: s = 3/8
 * both ways, S not below half of the smaller direct strength
 *
 * Range: usual fibre fractions. Weft bundles of a cloth and their resin crack well before Xt: a
 * knee in the curve at 0.3 to 0.6 % strain (common practice, no source).
 *
 * Source: netting analysis with estimated knock-downs (`formFactors`); Chamis, NASA TM-83320
 * (1983), from memory; `BOND_FACTOR` an estimate.
 *
 * @param mix Fibre, resin, fibre volume fraction [1] and reinforcement.
 * @returns Strengths, positive magnitudes [Pa].
 * @throws {InputError} If a phase, the fraction or the reinforcement cannot be meant.
 *
 * @example
 * ```ts
 * import { curedStrengths, isotropicFibre } from "@laminate/notebooks/micromechanics";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { Xt, Yt } = curedStrengths({
 *   fibre: {
 *     ...isotropicFibre({ E: 72e9, nu: 0.2 }),
 *     density: 2560,
 *     alpha1: 5e-6,
 *     alpha2: 5e-6,
 *     tensileStrength: 1700e6,
 *     compressiveStrength: 1100e6,
 *   },
 *   resin: {
 *     E: 3.2e9,
 *     nu: 0.35,
 *     density: 1150,
 *     alpha: 65e-6,
 *     beta: 0.33,
 *     tensileStrength: 68e6,
 *     compressiveStrength: 100e6,
 *     shearStrength: 45e6,
 *     hardenerPhr: 30,
 *   },
 *   fibreVolumeFraction: 0.4,
 *   reinforcement: { form: "woven", weave: "twill", warpShare: 0.5 },
 * });
 * assertAlmostEquals(Xt / 1e6, 0.5 * 0.4 * 1700 * 0.8, 1e-9);
 * assertAlmostEquals(Yt, Xt, 1e-3);
 * ```
 */
export function curedStrengths(mix: ReinforcedMix): LaminaStrengths {
  check.object("mix", mix);
  const factors = formFactors(mix.reinforcement);
  const resin = transverseStrengthsCrowded(mix);
  const { fibre, fibreVolumeFraction: Vf, reinforcement: { form, warpShare } } = mix;
  const pull = check.positive("fibre tensile strength", fibre.tensileStrength, "Pa") *
    Vf * factors.tension;
  const push = check.positive("fibre compressive strength", fibre.compressiveStrength, "Pa") *
    Vf * factors.compression;
  const tension = (share: number) => Math.max(share * pull, resin.tension * BOND_FACTOR);
  const kinking = fibre.compressiveStrength / fibre.E1;
  const beside = (1 - Vf) * mix.resin.E * kinking;
  const floor = (share: number) =>
    kinking < WEAK_STRAIN
      ? Math.max((1 - share) * resin.compression, Math.min(beside, resin.compression))
      : resin.compression;
  const compression = (share: number) => Math.max(share * push, floor(share));
  if (form === "mat") {
    const Xt = tension(RANDOM_SHARE);
    const Xc = compression(RANDOM_SHARE);
    return { Xt, Xc, Yt: Xt, Yc: Xc, S: Math.max(resin.shear, Math.min(Xt, Xc) / 2) };
  }
  check.fraction("warp share", warpShare);
  return {
    Xt: tension(warpShare),
    Xc: compression(warpShare),
    Yt: tension(1 - warpShare),
    Yc: compression(1 - warpShare),
    S: resin.shear,
  };
}
