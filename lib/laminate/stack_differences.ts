import { checksFor } from "../check/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";

const check = checksFor("compare the stacks");

/** Thicknesses closer than this share are the same [1]. */
const SAME_THICKNESS = 1e-9;

/** Angles closer than this are the same [deg]. */
const SAME_ANGLE_DEG = 1e-9;

/**
 * In what two stacks differ, such as that of a lay-up schedule and that of an orientation code.
 *
 * A ply turned by 180° is the same ply. Plies are compared by the name of their lamina, their
 * angle and their thickness.
 *
 * Formula: none
 *
 * Range: thickness to 1e-9 of itself, angle to 1e-9°
 *
 * Source: definition
 *
 * @param expected The stack to compare with.
 * @param actual The stack to judge.
 * @returns One sentence a difference; empty if the stacks are the same.
 * @throws {InputError} If a stack is empty, or a ply's lamina, thickness or angle is not possible.
 *
 * @example
 * ```ts
 * import { stackDifferences } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 * };
 * const ply = { lamina, thickness: 0.2e-3, angleDeg: 90 };
 * assertEquals(stackDifferences([ply], [{ ...ply, angleDeg: -90 }]), []);
 * assertEquals(stackDifferences([ply], [{ ...ply, angleDeg: 45 }]),
 *   ["ply 1 lies at 45°, not at 90°"]);
 * ```
 */
export function stackDifferences(expected: Stack, actual: Stack): readonly string[] {
  checkStack(check, expected);
  checkStack(check, actual);
  const differences = expected.length === actual.length
    ? []
    : [`there are ${actual.length} plies, not ${expected.length}`];
  const shared = Math.min(expected.length, actual.length);
  for (let k = 0; k < shared; k++) {
    differences.push(...plyDifferences(`ply ${k + 1}`, expected[k]!, actual[k]!));
  }
  return differences;
}

function plyDifferences(where: string, expected: Ply, actual: Ply): string[] {
  const differences: string[] = [];
  if (expected.lamina.name !== actual.lamina.name) {
    differences.push(`${where} is of ${actual.lamina.name}, not of ${expected.lamina.name}`);
  }
  const turn = actual.angleDeg - expected.angleDeg;
  if (!(Math.abs(turn - 180 * Math.round(turn / 180)) <= SAME_ANGLE_DEG)) {
    differences.push(`${where} lies at ${actual.angleDeg}°, not at ${expected.angleDeg}°`);
  }
  const gap = Math.abs(actual.thickness - expected.thickness);
  if (!(gap <= SAME_THICKNESS * expected.thickness)) {
    const inMm = (thickness: number): string => String(Number((thickness * 1e3).toPrecision(12)));
    differences.push(
      `${where} is ${inMm(actual.thickness)} mm thick, not ${inMm(expected.thickness)} mm`,
    );
  }
  return differences;
}
