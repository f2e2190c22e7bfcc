import type { Checks } from "../check/mod.ts";
import type { Lamina, Stack } from "../materials/mod.ts";

/** The constants of a lamina that its stiffness in the plane needs. */
export type InPlaneConstants = Pick<Lamina, "E1" | "E2" | "G12" | "nu12">;

/** Refuses constants that no elastic material can have. `where` leads the argument's name. */
export function checkInPlane(check: Checks, lamina: InPlaneConstants, where = ""): void {
  check.object(where === "" ? "lamina" : where.trimEnd(), lamina);
  const E1 = check.positive(`${where}E1`, lamina.E1, "Pa");
  const E2 = check.positive(`${where}E2`, lamina.E2, "Pa");
  check.positive(`${where}G12`, lamina.G12, "Pa");
  const nu12 = check.finite(`${where}nu12`, lamina.nu12);
  const limit = Math.sqrt(E1 / E2);
  if (!(Math.abs(nu12) < limit)) {
    check.refuse(
      `${where}nu12`,
      nu12,
      `must be between -${limit} and ${limit}, the root of E1/E2: beyond it a load would give ` +
        `energy away`,
    );
  }
}

/** Figures that not every result asks for. */
const OTHER_FIGURES = [
  ["G13", "Pa"],
  ["G23", "Pa"],
  ["density", "kg/m³"],
  ["alpha1", "1/K"],
  ["alpha2", "1/K"],
  ["beta1"],
  ["beta2"],
] as const;
const STRENGTHS = ["Xt", "Xc", "Yt", "Yc", "S"] as const;

/** Refuses a lamina with a figure that is no number, though the result may not ask for it. */
export function checkLamina(check: Checks, lamina: Lamina, where: string): void {
  checkInPlane(check, lamina, where);
  for (const [name, unit] of OTHER_FIGURES) {
    const value = lamina[name];
    // The name is only put together for the message.
    if (value !== undefined && !Number.isFinite(value)) {
      check.finite(`${where}${name}`, value, unit);
    }
  }
  if (lamina.strengths === undefined) return;
  check.object(`${where}strengths`, lamina.strengths);
  for (const name of STRENGTHS) {
    const value = lamina.strengths[name];
    if (!Number.isFinite(value)) check.finite(`${where}${name}`, value, "Pa");
  }
}

/** Refuses an angle that is no number, or so large that it must be a slip. */
export function checkAngle(check: Checks, angleDeg: number, argument = "angle"): number {
  return check.within(argument, angleDeg, { min: -360, max: 360, unit: "°" });
}

/** Refuses a stack whose stiffness cannot be computed. `more` checks what else a caller
 * needs of a lamina. */
export function checkStack(
  check: Checks,
  stack: Stack,
  more?: (lamina: Lamina, where: string) => void,
): void {
  check.list("stack", stack);
  stack.forEach((ply, index) => {
    const where = `ply ${index + 1} `;
    check.object(`ply ${index + 1}`, ply);
    check.positive(`${where}thickness`, ply.thickness, "m");
    checkAngle(check, ply.angleDeg, `${where}angle`);
    checkLamina(check, ply.lamina, `${where}lamina `);
    more?.(ply.lamina, `${where}lamina `);
  });
}

/** Refuses a result that left the range of numbers; returns it otherwise. */
export function checkResult<T extends object>(check: Checks, result: T): T {
  for (const [name, value] of Object.entries(result)) check.result(name, value);
  return result;
}
