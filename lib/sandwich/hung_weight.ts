import { checksFor } from "../check/mod.ts";
import type { ShearStiffness } from "./beam_section.ts";

const check = checksFor("read the cantilever");

/** A strip clamped at one end, with a weight hung on it. */
export interface HungWeight {
  /** Weight of the bag of shot, as a force [N]. */
  readonly load: number;
  /** From the clamp's edge to where it hangs [m]. */
  readonly arm: number;
  /** From the clamp's edge to the gauge or rule [m]. */
  readonly gaugeAt: number;
  /** How far the strip went down there when the weight was hung on [m]. */
  readonly deflection: number;
}

/**
 * Flexural rigidity of a strip clamped at one end, from how far a bag of shot bends it.
 *
 * Formula: gauge inside the arm (x ≤ a): δ = P x² (3a − x)/(6D) + P x/S; outside: δ =
 * P a² (3x − a)/(6D) + P a/S; solved for D
 *
 * Range: small deflections (tip below a tenth of the arm). The clamp gives way too: hang the weight
 * at two arms, and if D differs, read the strip's slope at the clamp or clamp it between thick
 * blocks. The strip's own weight does not count, since only the change is read.
 *
 * Source: cantilever with a point load, Roark's Formulas for Stress and Strain, from memory; shear
 * as `beamCompliance`.
 *
 * @param test Load [N], arm, place of the gauge and deflection [m].
 * @param shearStiffness Shear stiffness S [N]; "rigid" if left out.
 * @returns Flexural rigidity D, width included [N·m²].
 * @throws {InputError} If a figure is not above 0, or shear alone bends it as much.
 *
 * @example Half a kilogram at 300 mm, read at 400 mm
 * ```ts
 * import { rigidityFromHungWeight } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const D = rigidityFromHungWeight({ load: 4.903, arm: 0.3, gaugeAt: 0.4, deflection: 2.2e-3 });
 * assertAlmostEquals(D, 4.903 * 0.09 * 0.9 / (6 * 2.2e-3), 1e-12);
 * ```
 */
export function rigidityFromHungWeight(
  test: HungWeight,
  shearStiffness: ShearStiffness = "rigid",
): number {
  check.object("test", test);
  const { load, arm, gaugeAt, deflection } = test;
  check.positive("load", load, "N");
  check.positive("arm", arm, "m");
  check.positive("place of the gauge", gaugeAt, "m");
  check.positive("deflection", deflection, "m");
  const [near, far] = gaugeAt <= arm ? [gaugeAt, arm] : [arm, gaugeAt];
  const fromShear = shearStiffness === "rigid"
    ? 0
    : load * near / check.positive("shear stiffness", shearStiffness, "N");
  const fromBending = check.positive("deflection less that of shear", deflection - fromShear, "m");
  return check.result(
    "flexural rigidity",
    load * near * near * (3 * far - near) / (6 * fromBending),
    "N·m²",
  );
}
