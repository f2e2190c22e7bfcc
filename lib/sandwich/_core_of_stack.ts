import type { Checks } from "../check/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";

/** The core must hold more than this share of the stack's shear compliance Σ t/G. */
const CORE_SHARE = 0.9;

/** Transverse shear moduli of a turned layer. */
export interface TransverseModuli {
  /** In the plane of x and the thickness [Pa]. */
  readonly Gxz: number;
  /** In the plane of y and the thickness [Pa]. */
  readonly Gyz: number;
  /** Shear stress along x for shear strain along y [Pa]. */
  readonly Gxy: number;
}

/** Transverse shear moduli of a layer in the axes of the laminate. */
export function transverseModuli({ lamina, angleDeg }: Ply): TransverseModuli {
  const angle = angleDeg * Math.PI / 180;
  // Doubled angles: exact 0 at multiples of 90° matters, so that a cross-ply stays uncoupled.
  const cosine = angleDeg % 90 === 0 ? (angleDeg % 180 === 0 ? 1 : -1) : Math.cos(2 * angle);
  const sine = angleDeg % 90 === 0 ? 0 : Math.sin(2 * angle);
  const mean = (lamina.G13 + lamina.G23) / 2;
  const half = (lamina.G13 - lamina.G23) / 2;
  return { Gxz: mean + half * cosine, Gyz: mean - half * cosine, Gxy: half * sine };
}

/** The layer inside that is softer in shear than all others together; none if there is none. */
export function findCore(stack: Stack): number | undefined {
  const compliances = stack.map((ply) => {
    const { Gxz, Gyz } = transverseModuli(ply);
    return ply.thickness / Math.sqrt(Gxz * Gyz);
  });
  const total = compliances.reduce((sum, value) => sum + value, 0);
  const index = compliances.findIndex((value) => value > CORE_SHARE * total);
  return index > 0 && index < stack.length - 1 ? index : undefined;
}

/** Refuses a stack whose plies cannot be meant. */
export function checkPlies(check: Checks, stack: Stack, least: number): void {
  check.list("stack", stack, least);
  stack.forEach((ply, i) => {
    check.object(`ply ${i + 1}`, ply);
    check.object(`lamina of ply ${i + 1}`, ply.lamina);
    check.positive(`thickness of ply ${i + 1}`, ply.thickness, "m");
    check.finite(`angle of ply ${i + 1}`, ply.angleDeg, "°");
    for (const field of ["E1", "E2", "G12", "G13", "G23"] as const) {
      check.positive(`${field} of ply ${i + 1}`, ply.lamina[field], "Pa");
    }
    for (const field of ["nu12", "density", "alpha1", "alpha2"] as const) {
      check.finite(`${field} of ply ${i + 1}`, ply.lamina[field]);
    }
  });
}

/** The core's place: as given, or found; refuses one that is not inside. */
export function coreIndexOf(check: Checks, stack: Stack, given: number | undefined): number {
  const index = given ?? findCore(stack);
  if (index === undefined) {
    return check.refuse(
      "stack",
      stack,
      "must have a core inside, one layer far softer in shear than the others: name it by its " +
        "index if it has one",
    );
  }
  if (!(Number.isInteger(index) && index > 0 && index < stack.length - 1)) {
    check.refuse("core index", index, `must be a layer inside: 1 to ${stack.length - 2}`);
  }
  return index;
}
