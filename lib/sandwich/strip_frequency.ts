import { checksFor } from "../check/mod.ts";
import { findRoot } from "../numeric/mod.ts";
import type { ShearStiffness } from "./beam_section.ts";

const check = checksFor("compute the strip's note");

/** How a strip is held while it rings. */
export type StripSupport = "free" | "simple";

/** A strip that is tapped. */
export interface TappedStrip {
  /** Length of the strip; between the supports where it has some [m]. */
  readonly length: number;
  /** Mass of that length [kg]. */
  readonly mass: number;
  /** Hung on threads or laid on foam at its nodes ("free"), or on two supports ("simple"). */
  readonly support: StripSupport;
}

/** Stiffnesses of a strip; a `BeamSection` has both. */
export interface StripStiffness {
  /** Flexural rigidity D, width included [N·m²]. */
  readonly flexuralRigidity: number;
  /** Shear stiffness S, width included [N], or "rigid". */
  readonly shearStiffness: ShearStiffness;
}

/** First root of tan x + tanh x = 0: half of 4.7300, the free strip's wave without shear [1]. */
const FREE = 2.3650203724313523;

function checkStrip(strip: TappedStrip): void {
  check.object("strip", strip);
  check.positive("length", strip.length, "m");
  check.positive("mass", strip.mass, "kg");
  check.oneOf("support", strip.support, ["free", "simple"]);
}

/**
 * The lowest note of a strip that bends and shears.
 *
 * Formula: D w'''' + (μ D/S) w'' − μ w = 0 with μ = (m/L)(2πf)²; simple: μ = k⁴ D/(1 + k² D/S),
 * k = π/L; free: β tan(βL/2) + α tanh(αL/2) = 0,
 * α² = β²/(1 + β² D/S), μ = β⁴ D/(1 + β² D/S). Without shear
 * f = 3.5608/L² √(D L/m) free, (π/2)/L² √(D L/m) simple
 *
 * Range: small amplitude; the strip's turning inertia is not counted (below 1 % for strips longer
 * than ten times their thickness). Air makes a light, wide strip ring some per cent lower.
 *
 * Source: beam with shear (Timoshenko without rotary inertia), solved here; limits as Blevins,
 * Formulas for Natural Frequency and Mode Shape (1979), from memory.
 *
 * @param strip Length [m], mass [kg] and support.
 * @param stiffness D [N·m²] and S [N].
 * @returns Frequency [Hz].
 * @throws {InputError} If a figure is not above 0 or the support is not known.
 *
 * @example A steel rule of 300 × 30 × 1 mm hung on threads
 * ```ts
 * import { stripFrequency } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const strip = { length: 0.3, mass: 7850 * 0.3 * 0.03 * 0.001, support: "free" } as const;
 * const flexuralRigidity = 205e9 * 0.03 * 0.001 ** 3 / 12;
 * const frequency = stripFrequency(strip, { flexuralRigidity, shearStiffness: "rigid" });
 * assertAlmostEquals(frequency, 58.37, 0.01);
 * ```
 */
export function stripFrequency(strip: TappedStrip, stiffness: StripStiffness): number {
  checkStrip(strip);
  check.object("stiffness", stiffness);
  const { flexuralRigidity: D, shearStiffness } = stiffness;
  check.positive("flexural rigidity", D, "N·m²");
  const shear = shearStiffness === "rigid"
    ? 0
    : 1 / check.positive("shear stiffness", shearStiffness, "N");
  const { length, mass, support } = strip;
  const mu = support === "simple" ? simpleMu(length, D, shear) : freeMu(length, D, shear);
  return check.result("frequency", Math.sqrt(mu * length / mass) / (2 * Math.PI), "Hz");
}

function simpleMu(length: number, D: number, shear: number): number {
  const k2 = (Math.PI / length) ** 2;
  return k2 * k2 * D / (1 + k2 * D * shear);
}

/** The first symmetric wave with neither moment nor shear force at its ends. */
function freeMu(length: number, D: number, shear: number): number {
  const half = length / 2;
  const lean = (beta: number): number => 1 + D * shear * beta * beta;
  // tan is below 0 from π/2 to π: there βL/2 has its first root, 2.365 without shear.
  const balance = (turn: number): number => {
    const beta = turn / half;
    const alpha = beta / Math.sqrt(lean(beta));
    return beta * Math.sin(turn) + alpha * Math.cos(turn) * Math.tanh(alpha * half);
  };
  const beta = findRoot(balance, { from: Math.PI / 2, to: Math.PI }) / half;
  return beta ** 4 * D / lean(beta);
}

/**
 * Flexural rigidity of a strip from the note that it gives when tapped: a kitchen scale and a
 * telephone that counts hertz will do.
 *
 * Formula: the D at which `stripFrequency` gives the note
 *
 * Range: as `stripFrequency`. Of a sandwich the shear stiffness must be known, or the strip be so
 * long that it hardly counts; the flexural rigidity must exist: a strip that its shear alone holds
 * below the note is refused. For the uncertainty give this function to `propagate`: 1 % of
 * frequency are 2 % of D, 1 % of length 3 %.
 *
 * Source: as `stripFrequency`; ASTM E1876 (free strip by impulse), from memory.
 *
 * @param strip Length [m], mass [kg] and support.
 * @param frequency The lowest note [Hz].
 * @param shearStiffness Shear stiffness S [N]; "rigid" if left out.
 * @returns Flexural rigidity D, width included [N·m²].
 * @throws {InputError} If a figure is not above 0, or shear alone keeps the strip below the note.
 *
 * @example
 * ```ts
 * import { rigidityFromNote, stripFrequency } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const strip = { length: 0.65, mass: 0.103, support: "free" } as const;
 * const note = stripFrequency(strip, { flexuralRigidity: 29, shearStiffness: 22000 });
 * assertAlmostEquals(rigidityFromNote(strip, note, 22000), 29, 1e-9);
 * ```
 */
export function rigidityFromNote(
  strip: TappedStrip,
  frequency: number,
  shearStiffness: ShearStiffness = "rigid",
): number {
  checkStrip(strip);
  check.positive("frequency", frequency, "Hz");
  const { length, mass, support } = strip;
  const mu = mass / length * (2 * Math.PI * frequency) ** 2;
  const plain = support === "simple" ? mu * (length / Math.PI) ** 4 : mu * (length / 2 / FREE) ** 4;
  if (shearStiffness === "rigid") return check.result("flexural rigidity", plain, "N·m²");
  check.positive("shear stiffness", shearStiffness, "N");
  // Relative to the note, so that the search is as good for a plank as for a splinter.
  const below = (share: number): number =>
    stripFrequency(strip, { flexuralRigidity: plain * share, shearStiffness }) / frequency - 1;
  let most = 2;
  while (most < 1e9 && below(most) < 0) most *= 4;
  if (below(most) < 0) {
    check.refuse("frequency", `${frequency} Hz`, "must be one that this shear stiffness allows");
  }
  return check.result("flexural rigidity", plain * findRoot(below, { from: 0.5, to: most }));
}
