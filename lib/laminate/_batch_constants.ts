/** The table of lamina constants that the batch kernel reads. */
import type { Checks } from "../check/mod.ts";
import type { Lamina } from "../materials/mod.ts";
import { LAMINA } from "./_batch_layout.ts";
import { checkInPlane } from "./_checks.ts";
import { checkExpansion, type EnvironmentChange, freeStrainOf } from "./_free_strain.ts";
import { reducedStiffnessOf } from "./_lamina.ts";

/** Checks the laminas and computes, once each, what every ply made of them needs. */
export function kernelConstants(
  check: Checks,
  laminas: readonly Lamina[],
  change: EnvironmentChange,
): Float64Array {
  const checkFree = checkExpansion(check, change);
  const table = new Float64Array(LAMINA.length * laminas.length);
  laminas.forEach((lamina, index) => {
    const where = `lamina ${index + 1} `;
    checkInPlane(check, lamina, where);
    checkFree(lamina, where);
    const row = table.subarray(LAMINA.length * index, LAMINA.length * (index + 1));
    setStiffness(row, lamina, change);
    if (lamina.strengths !== undefined) setStrengths(check, row, { lamina, where });
  });
  return table;
}

function setStiffness(row: Float64Array, lamina: Lamina, change: EnvironmentChange): void {
  const { Q11, Q12, Q22, Q66 } = reducedStiffnessOf(lamina);
  row[LAMINA.U1] = (3 * Q11 + 3 * Q22 + 2 * Q12 + 4 * Q66) / 8;
  row[LAMINA.U2] = (Q11 - Q22) / 2;
  row[LAMINA.U3] = (Q11 + Q22 - 2 * Q12 - 4 * Q66) / 8;
  row[LAMINA.U4] = (Q11 + Q22 + 6 * Q12 - 4 * Q66) / 8;
  row[LAMINA.Q11] = Q11;
  row[LAMINA.Q12] = Q12;
  row[LAMINA.Q22] = Q22;
  row[LAMINA.Q66] = Q66;
  const { alpha1, alpha2 } = freeStrainOf(lamina, change);
  const free1 = Q11 * alpha1 + Q12 * alpha2;
  const free2 = Q12 * alpha1 + Q22 * alpha2;
  row[LAMINA.freeMean] = (free1 + free2) / 2;
  row[LAMINA.freeHalf] = (free1 - free2) / 2;
}

/** Tsai–Wu with F12 = −½ √(F11 F22); a lamina without strengths keeps zeros and is never worst. */
function setStrengths(
  check: Checks,
  row: Float64Array,
  { lamina, where }: { readonly lamina: Lamina; readonly where: string },
): void {
  const strengths = check.object(`${where}strengths`, lamina.strengths!);
  const [Xt, Xc, Yt, Yc, S] = (["Xt", "Xc", "Yt", "Yc", "S"] as const)
    .map((name) => check.positive(`${where}strength ${name}`, strengths[name], "Pa")) as Five;
  const F11 = 1 / (Xt * Xc);
  const F22 = 1 / (Yt * Yc);
  row[LAMINA.F1] = 1 / Xt - 1 / Xc;
  row[LAMINA.F2] = 1 / Yt - 1 / Yc;
  row[LAMINA.F11] = F11;
  row[LAMINA.F22] = F22;
  row[LAMINA.F66] = 1 / (S * S);
  row[LAMINA.twoF12] = -Math.sqrt(F11 * F22);
}

type Five = [number, number, number, number, number];
