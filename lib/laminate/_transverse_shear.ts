/** Transverse shear by equilibrium, without checks. */
import type { Stack } from "../materials/mod.ts";
import { sineCosineDeg } from "./_degrees.ts";
import { rotatedStiffnessOf } from "./_lamina.ts";
import {
  abdMatrix,
  type PlyHeights,
  plyHeightsOf,
  stiffnessSumsOf,
  symmetricInverse,
} from "./_stack.ts";

/** Stress at bottom, middle and top of a ply for a transverse force of 1 [1/m]. */
interface ShearParabola {
  readonly xz: readonly number[];
  readonly yz: readonly number[];
}

/** The parabolas of one ply for a force of 1 along each axis. */
export interface ShearBasis {
  readonly heights: PlyHeights;
  readonly forQx: ShearParabola;
  readonly forQy: ShearParabola;
}

/** Shear stress through each ply for a transverse force of 1 along x, and along y. */
export function shearBasisOf(stack: Stack): ShearBasis[] {
  const compliance = symmetricInverse(abdMatrix(stiffnessSumsOf(stack)));
  const alongX = parabolasFor(stack, Array.from({ length: 6 }, (_, i) => compliance[6 * i + 3]!));
  const alongY = parabolasFor(stack, Array.from({ length: 6 }, (_, i) => compliance[6 * i + 4]!));
  return plyHeightsOf(stack).map((heights, k) => ({
    heights,
    forQx: { xz: alongX[k]![0], yz: alongX[k]![2] },
    forQy: { xz: alongY[k]![2], yz: alongY[k]![1] },
  }));
}

type Parabolas = readonly [readonly number[], readonly number[], readonly number[]];

/**
 * Minus the integral of σx, σy and τxy from the mould face up, at three heights of each ply, for
 * strains that change at the rate given. The three are 0 at the bag face, since no force changes;
 * the integral from there down is used above the middle of the stack, for the sake of rounding.
 */
function parabolasFor(stack: Stack, strainRate: readonly number[]): Parabolas[] {
  const up = integrals(stack, strainRate);
  const mirrored = stack.toReversed();
  const down = integrals(mirrored, strainRate.map((rate, i) => i < 3 ? rate : -rate))
    .toReversed();
  return up.map((fromMould, k) => {
    if (2 * k < stack.length) return fromMould;
    return down[k]!.map((values) =>
      values.toReversed().map((value) => 0 - value)
    ) as unknown as Parabolas;
  });
}

function integrals(stack: Stack, strainRate: readonly number[]): Parabolas[] {
  const heights = plyHeightsOf(stack);
  const sum = [0, 0, 0];
  return stack.map(({ lamina, angleDeg }, k) => {
    const { Q11, Q12, Q16, Q22, Q26, Q66 } = rotatedStiffnessOf(lamina, angleDeg);
    const rows = [[Q11, Q12, Q16], [Q12, Q22, Q26], [Q16, Q26, Q66]];
    const { bottom, middle, top } = heights[k]!;
    return rows.map((row, i) => {
      const constant = row.reduce((total, entry, j) => total + entry * strainRate[j]!, 0);
      const slope = row.reduce((total, entry, j) => total + entry * strainRate[j + 3]!, 0);
      const start = sum[i]!;
      // ∫ (constant + slope z) dz from the bottom of the ply
      const at = (z: number): number =>
        start - (z - bottom) * (constant + slope * (z + bottom) / 2);
      sum[i] = at(top);
      return [start, at(middle), at(top)];
    }) as unknown as Parabolas;
  });
}

/** Shear compliance of the laminate by energy [m/N]. */
export interface ShearCompliance {
  readonly xx: number;
  readonly xy: number;
  readonly yy: number;
}

/** Energy of the two unit states, and of one on the other. */
export function shearComplianceOf(stack: Stack, basis: readonly ShearBasis[]): ShearCompliance {
  let [xx, xy, yy] = [0, 0, 0];
  stack.forEach(({ lamina: { G13, G23 }, thickness, angleDeg }, k) => {
    const { sine, cosine } = sineCosineDeg(angleDeg);
    const [c2, s2, sc] = [cosine * cosine, sine * sine, sine * cosine];
    const [soft1, soft2] = [1 / G13, 1 / G23];
    const turned = {
      xz: c2 * soft1 + s2 * soft2,
      yz: s2 * soft1 + c2 * soft2,
      mixed: sc * (soft1 - soft2),
    };
    const energy = (one: ShearParabola, other: ShearParabola): number =>
      thickness * (
        turned.xz * meanProduct(one.xz, other.xz) + turned.yz * meanProduct(one.yz, other.yz) +
        turned.mixed * (meanProduct(one.xz, other.yz) + meanProduct(one.yz, other.xz))
      );
    const { forQx, forQy } = basis[k]!;
    xx += energy(forQx, forQx);
    xy += energy(forQx, forQy);
    yy += energy(forQy, forQy);
  });
  return { xx, xy, yy };
}

/** Mean over a ply of the product of two parabolas, each given at bottom, middle and top. */
function meanProduct(p: readonly number[], q: readonly number[]): number {
  const [p0, p1, p2] = [p[0]!, p[1]!, p[2]!];
  const [q0, q1, q2] = [q[0]!, q[1]!, q[2]!];
  return (p0 * (4 * q0 + 2 * q1 - q2) + 2 * p1 * (q0 + 8 * q1 + q2) + p2 * (4 * q2 + 2 * q1 - q0)) /
    30;
}

/** Sum of transverse shear modulus times thickness, in the two planes. */
export function shearSumOf(stack: Stack): { readonly xz: number; readonly yz: number } {
  let [xz, yz] = [0, 0];
  for (const { lamina: { G13, G23 }, thickness, angleDeg } of stack) {
    const { sine, cosine } = sineCosineDeg(angleDeg);
    const [c2, s2] = [cosine * cosine, sine * sine];
    xz += thickness * (c2 * G13 + s2 * G23);
    yz += thickness * (s2 * G13 + c2 * G23);
  }
  return { xz, yz };
}
