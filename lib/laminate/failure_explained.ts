import { checksFor } from "../check/mod.ts";
import { failureCriteria, type FailureCriterion } from "./failure_criterion.ts";

const check = checksFor("explain the failure criterion");

/** A failure criterion in words, for those who have to choose one. */
export interface CriterionExplained {
  /** What it compares, in a sentence. */
  readonly looksAt: string;
  /** What it does not know, in a sentence. */
  readonly overlooks: string;
  /** Its condition for failure, as TeX. */
  readonly formula: string;
  /** Where it comes from. */
  readonly source: string;
}

const JONES =
  "R. M. Jones, Mechanics of Composite Materials, 2nd ed. 1999, section 2.9, from memory";

const EXPLAINED: Readonly<Record<FailureCriterion, CriterionExplained>> = Object.freeze({
  "maximum stress": {
    looksAt: "each stress by itself, against its own strength",
    overlooks: "that stresses act together: unsafe where two are large",
    formula:
      "\\max\\left(\\frac{|\\sigma_1|}{X}, \\frac{|\\sigma_2|}{Y}, \\frac{|\\tau_{12}|}{S}\\right) = 1",
    source: JONES,
  },
  "maximum strain": {
    looksAt: "each strain by itself; a pull along the fibres eases or adds to the strain across",
    overlooks: "that strains act together, and that real plies are not linear up to failure",
    formula:
      "\\max\\left(\\frac{|\\varepsilon_1|}{e_1}, \\frac{|\\varepsilon_2|}{e_2}, \\frac{|\\gamma_{12}|}{g_{12}}\\right) = 1",
    source: JONES,
  },
  "Tsai-Hill": {
    looksAt: "all stresses in one sum of squares, strengths by the sign of each stress",
    overlooks: "how the ply fails: one number for fibre and matrix",
    formula:
      "\\frac{\\sigma_1^2 - \\sigma_1\\sigma_2}{X^2} + \\frac{\\sigma_2^2}{Y^2} + \\frac{\\tau_{12}^2}{S^2} = 1",
    source: JONES,
  },
  "Tsai-Hill, tensile strengths": {
    looksAt: "all stresses in one sum of squares, tensile strengths throughout",
    overlooks: "that compression has strengths of its own: unsafe where they are lower",
    formula:
      "\\frac{\\sigma_1^2 - \\sigma_1\\sigma_2}{X_t^2} + \\frac{\\sigma_2^2}{Y_t^2} + \\frac{\\tau_{12}^2}{S^2} = 1",
    source: "A. K. Kaw, Mechanics of Composite Materials, 2nd ed. 2006, example 2.17, from memory",
  },
  "Tsai-Wu": {
    looksAt: "all stresses in one closed surface, tension and compression each with its strength",
    overlooks: "how the ply fails; its F12 is a convention unless it was measured",
    formula: "F_1\\sigma_1 + F_2\\sigma_2 + F_{11}\\sigma_1^2 + F_{22}\\sigma_2^2 + " +
      "F_{66}\\tau_{12}^2 + 2F_{12}\\sigma_1\\sigma_2 = 1",
    source: "S. W. Tsai and E. M. Wu, J. Composite Materials 5 (1971) 58, from memory",
  },
  "Hashin": {
    looksAt: "fibre and matrix apart, tension and compression apart, shear added to each",
    overlooks:
      "that pressure across the fibres helps against shear; made for plies of one direction",
    formula:
      "\\frac{\\sigma_1^2}{X_t^2} + \\frac{\\tau_{12}^2}{S^2} = 1, \\quad \\frac{\\sigma_2^2}{Y_t^2} + \\frac{\\tau_{12}^2}{S^2} = 1, \\ldots",
    source: "Z. Hashin, J. Applied Mechanics 47 (1980) 329, from memory",
  },
  "Puck": {
    looksAt:
      "fibre and matrix apart; the matrix by the plane on which it cracks, which pressure holds shut",
    overlooks: "that fibre failure and shear act together; made for plies of one direction",
    formula:
      "\\sqrt{\\frac{\\tau_{12}^2}{S^2} + \\left(1 - \\frac{p^+ Y_t}{S}\\right)^2 \\frac{\\sigma_2^2}{Y_t^2}} + \\frac{p^+ \\sigma_2}{S} = 1, \\ldots",
    source: "A. Puck and H. Schürmann, Compos. Sci. Technol. 58 (1998) 1045, from memory",
  },
});

/**
 * A failure criterion in words: what it compares, what it overlooks, and its formula as TeX.
 *
 * Formula: that of the criterion's own function, in its leading form
 *
 * Range: every criterion
 *
 * Source: named in the result
 *
 * @param criterion The criterion.
 * @returns Words, TeX and source.
 * @throws {InputError} If there is no such criterion.
 *
 * @example
 * ```ts
 * import { explainCriterion } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * assertEquals(
 *   explainCriterion("maximum stress").looksAt,
 *   "each stress by itself, against its own strength",
 * );
 * ```
 */
export function explainCriterion(criterion: FailureCriterion): CriterionExplained {
  return EXPLAINED[check.oneOf("criterion", criterion, failureCriteria)];
}
