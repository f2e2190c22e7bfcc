import type { PuckSlopes } from "./failure_puck.ts";
import type { StrainAllowables } from "./failure_strengths.ts";

/** One of the failure criteria, by the name under which the field knows it. */
export type FailureCriterion =
  | "maximum stress"
  | "maximum strain"
  | "Tsai-Hill"
  | "Tsai-Hill, tensile strengths"
  | "Tsai-Wu"
  | "Hashin"
  | "Puck";

/** All failure criteria, the plainest first. */
export const failureCriteria: readonly FailureCriterion[] = Object.freeze([
  "maximum stress",
  "maximum strain",
  "Tsai-Hill",
  "Tsai-Hill, tensile strengths",
  "Tsai-Wu",
  "Hashin",
  "Puck",
]);

/** By which criterion a laminate is judged, and what the criterion needs beside strengths. */
export interface FailureOptions {
  /** The criterion. */
  readonly criterion: FailureCriterion;
  /** Factor on every strength and allowable, above 0 and up to 1; 1 if left out [1]. */
  readonly knockDown?: number;
  /** For maximum strain: allowables by the name of the lamina. */
  readonly allowables?: Readonly<Record<string, StrainAllowables>>;
  /** For Tsai–Wu: F12/√(F11 F22); −½ if left out [1]. */
  readonly interaction?: number;
  /** For Hashin: transverse shear strength by the name of the lamina; Yc/2 if left out [Pa]. */
  readonly transverseShearStrengths?: Readonly<Record<string, number>>;
  /** For Hashin: share of shear in fibre tension, 0 to 1; 1 if left out [1]. */
  readonly shearInFibreTension?: number;
  /** For Puck: slopes of the fracture curve; those of glass if left out. */
  readonly slopes?: PuckSlopes;
}
