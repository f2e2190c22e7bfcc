import { checksFor } from "../check/mod.ts";
import type { Reinforcement } from "../materials/mod.ts";

const check = checksFor("look up the knock-downs of a reinforcement");

/** How much of the straight fibre's figures a form of reinforcement keeps. */
export interface FormFactors {
  /** On the modulus along the fibres: crimp and waviness [1]. */
  readonly stiffness: number;
  /** On the fibres' tensile strength [1]. */
  readonly tension: number;
  /** On the fibres' compressive strength [1]. */
  readonly compression: number;
  /** Where the figures come from. */
  readonly source: string;
}

const CRIMP =
  "estimate of this project: crimp costs a few to fifteen per cent of stiffness, more of strength, " +
  "plain more than twill more than satin (trend: Ishikawa and Chou, J. Mater. Sci. 17 (1982) 3211, " +
  "from memory)";
const STRAIGHT = "estimate of this project: slight waviness of hand-laid straight fibre";

/** The knock-downs by form and weave; estimates, meant to be replaced by a builder's own tests. */
export const FORM_FACTORS: Readonly<
  Record<"unidirectional" | "stitched" | "plain" | "twill" | "satin" | "mat", FormFactors>
> = Object.freeze({
  unidirectional: { stiffness: 0.97, tension: 0.9, compression: 0.85, source: STRAIGHT },
  stitched: { stiffness: 0.97, tension: 0.9, compression: 0.85, source: STRAIGHT },
  plain: { stiffness: 0.9, tension: 0.75, compression: 0.7, source: CRIMP },
  twill: { stiffness: 0.93, tension: 0.8, compression: 0.75, source: CRIMP },
  satin: { stiffness: 0.96, tension: 0.85, compression: 0.8, source: CRIMP },
  mat: {
    stiffness: 0.9,
    tension: 0.8,
    compression: 0.8,
    source: "estimate of this project, set beside ISO 12215-5:2008 annex C (85 MPa in tension at " +
      "0.30 by mass), from memory",
  },
});

/**
 * The knock-downs for a reinforcement, by its weave if it is woven and by its form otherwise.
 *
 * Formula: a table, `FORM_FACTORS`
 *
 * Range: hand-laid to bagged work. A woven cloth without a named weave counts as plain, the worst.
 *
 * Source: estimates, each with its own source text.
 *
 * @param reinforcement Form and weave of the reinforcement.
 * @returns Knock-downs [1] and their source.
 * @throws {InputError} If the form or weave is not known.
 *
 * @example
 * ```ts
 * import { formFactors } from "@laminate/notebooks/micromechanics";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(formFactors({ form: "woven", weave: "twill" }).stiffness, 0.93);
 * ```
 */
export function formFactors(
  reinforcement: Pick<Reinforcement, "form" | "weave">,
): FormFactors {
  check.object("reinforcement", reinforcement);
  const { form, weave } = reinforcement;
  check.oneOf("form", form, ["unidirectional", "woven", "stitched", "mat"]);
  check.oneOf("weave", weave, ["none", "plain", "twill", "satin"]);
  if (form !== "woven") return FORM_FACTORS[form];
  return FORM_FACTORS[weave === "none" ? "plain" : weave];
}
