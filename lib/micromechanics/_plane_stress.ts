/** Stiffness of a lamina in plane stress [Pa]. */
export interface PlaneStiffness {
  readonly Q11: number;
  readonly Q12: number;
  readonly Q22: number;
  readonly Q66: number;
}

/** The constants from which it follows, and back. */
export interface PlaneConstants {
  readonly E1: number;
  readonly E2: number;
  readonly nu12: number;
  readonly G12: number;
}

/** Two expansions in the plane, of heat or of moisture. */
export interface PlaneExpansion {
  readonly along: number;
  readonly across: number;
}

/** Plane-stress stiffness of an orthotropic lamina. */
export function planeStiffness({ E1, E2, nu12, G12 }: PlaneConstants): PlaneStiffness {
  const whole = 1 - nu12 * nu12 * E2 / E1;
  return { Q11: E1 / whole, Q12: nu12 * E2 / whole, Q22: E2 / whole, Q66: G12 };
}

/** The engineering constants of a plane-stress stiffness. */
export function planeConstants({ Q11, Q12, Q22, Q66 }: PlaneStiffness): PlaneConstants {
  return {
    E1: Q11 - Q12 * Q12 / Q22,
    E2: Q22 - Q12 * Q12 / Q11,
    nu12: Q12 / Q22,
    G12: Q66,
  };
}

/** Layers along and across, stretched alike: `share` of the thickness lies along 1. */
export function crossedStiffness(ply: PlaneStiffness, share: number): PlaneStiffness {
  const { Q11, Q12, Q22, Q66 } = ply;
  return {
    Q11: share * Q11 + (1 - share) * Q22,
    Q12,
    Q22: share * Q22 + (1 - share) * Q11,
    Q66,
  };
}

/** Free expansion of the same crossed layers. */
export function crossedExpansion(
  ply: PlaneStiffness,
  expansion: PlaneExpansion,
  share: number,
): PlaneExpansion {
  const along = ply.Q11 * expansion.along + ply.Q12 * expansion.across;
  const across = ply.Q12 * expansion.along + ply.Q22 * expansion.across;
  const N1 = share * along + (1 - share) * across;
  const N2 = share * across + (1 - share) * along;
  const { Q11, Q12, Q22 } = crossedStiffness(ply, share);
  const determinant = Q11 * Q22 - Q12 * Q12;
  return {
    along: (Q22 * N1 - Q12 * N2) / determinant,
    across: (Q11 * N2 - Q12 * N1) / determinant,
  };
}

/** The same ply in every direction of the plane: its invariants make an isotropic stiffness. */
export function randomStiffness({ Q11, Q12, Q22, Q66 }: PlaneStiffness): PlaneStiffness {
  const U1 = (3 * Q11 + 3 * Q22 + 2 * Q12 + 4 * Q66) / 8;
  const U4 = (Q11 + Q22 + 6 * Q12 - 4 * Q66) / 8;
  return { Q11: U1, Q12: U4, Q22: U1, Q66: (U1 - U4) / 2 };
}

/** Free expansion of the same. */
export function randomExpansion(ply: PlaneStiffness, expansion: PlaneExpansion): number {
  const { Q11, Q12, Q22 } = ply;
  const N = (Q11 + Q12) * expansion.along + (Q12 + Q22) * expansion.across;
  return N / (Q11 + Q22 + 2 * Q12);
}
