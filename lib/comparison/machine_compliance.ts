import { checksFor } from "../check/mod.ts";
import type { BeamLoadCase } from "../sandwich/mod.ts";
import { propagate, type Propagated, type Uncertain } from "../statistics/mod.ts";
import { LOAD_CASE } from "./_shape.ts";

const check = checksFor("subtract the machine's compliance");

/** A plain bar of known stiffness, bent on the same supports. */
export interface KnownBar {
  /** How it was held and loaded. */
  readonly loadCase: BeamLoadCase;
  /** Measured slope of deflection on total load, machine and bar together [m/N]. */
  readonly compliance: Uncertain;
  /** Support span [m]. */
  readonly span: Uncertain;
  /** Width of the bar [m]. */
  readonly width: Uncertain;
  /** Thickness of the bar [m]. */
  readonly thickness: Uncertain;
  /** Young's modulus; steel, 205 GPa ± 3 GPa, if left out [Pa]. */
  readonly E?: Uncertain;
  /** Poisson ratio; 0.29 if left out [1]. */
  readonly nu?: number;
}

/** Inputs of a machine's compliance, by the words that a budget shows. */
export type BarInput = "measured slope" | "span" | "width" | "thickness" | "modulus of the bar";

/** What supports, frame and load train give way by. */
export interface MachineCompliance extends Propagated<BarInput> {
  /** What the bar alone should give [m/N]. */
  readonly barCompliance: number;
}

/** A measured compliance without the machine's share. */
export interface WithoutMachine extends Uncertain {
  /** The machine's share of what was measured [1]. */
  readonly machineShare: number;
  /** Remarks, empty where there is nothing to say. */
  readonly notes: readonly string[];
}

/** Structural steel: 205 GPa, spread of usual steels, from memory. */
const STEEL: Uncertain = { value: 205e9, u: 3e9 };

/**
 * How much do supports, frame and load train give way? From a run on a thick steel bar, whose own
 * bending is known.
 *
 * Formula: Cm = C − (kb L³/(E b h³/12) + ks L/(κ G b h)), κ = 5/6, G = E/2(1 + ν)
 *
 * Range: a bar that stays elastic and lies on both supports. Best a bar far stiffer than the
 * specimens, so that what is measured is mostly the machine; a note says where it cannot be told
 * from zero.
 *
 * Source: ASTM D790 (machine compliance), from memory; Timoshenko beam, κ 5/6 for a rectangle.
 *
 * @param bar Load case, measured slope [m/N], span and section [m], modulus [Pa].
 * @returns The machine's compliance with its budget, and what the bar alone should give [m/N].
 * @throws {InputError} If a length, the slope or the modulus is not above 0.
 *
 * @example
 * ```ts
 * import { machineCompliance } from "@laminate/notebooks/comparison";
 * import { beamLoadCases } from "@laminate/notebooks/sandwich";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const exactly = (value: number) => ({ value, u: 0 });
 * const machine = machineCompliance({
 *   loadCase: beamLoadCases.threePoint,
 *   compliance: { value: 3e-6, u: 1e-8 },
 *   span: exactly(0.5),
 *   width: exactly(0.05),
 *   thickness: exactly(0.02),
 * });
 * assertAlmostEquals(machine.barCompliance * 1e7, 3.82985, 1e-4);
 * assertAlmostEquals(machine.value * 1e6, 2.61701, 1e-4);
 * ```
 */
export function machineCompliance(bar: KnownBar): MachineCompliance {
  check.object("bar", bar);
  const { loadCase, compliance, span, width, thickness, E = STEEL, nu = 0.29 } = bar;
  check.shape("load case", loadCase, LOAD_CASE);
  check.within("Poisson ratio", nu, { min: 0, max: 0.5 });
  const inputs = {
    "measured slope": positive("measured slope", compliance, "m/N"),
    span: positive("span", span, "m"),
    width: positive("width", width, "m"),
    thickness: positive("thickness", thickness, "m"),
    "modulus of the bar": positive("modulus of the bar", E, "Pa"),
  };
  const { bending, shear } = loadCase.deflection;
  const ofBar = (values: Readonly<Record<BarInput, number>>): number => {
    const { span: L, width: b, thickness: h, "modulus of the bar": modulus } = values;
    const G = modulus / (2 * (1 + nu));
    return bending * L ** 3 / (modulus * b * h ** 3 / 12) + shear * L / (5 / 6 * G * b * h);
  };
  const result = propagate((values) => values["measured slope"] - ofBar(values), inputs);
  const barCompliance = compliance.value - result.value;
  const notes = [...result.notes];
  if (result.value < -2 * result.u) {
    notes.push("The bar bends less than it should: check its thickness and modulus, and the load.");
  } else if (result.value < 2 * result.u) {
    notes.push("The machine's compliance cannot be told from zero with this bar.");
  }
  return { ...result, notes, barCompliance };
}

function positive(name: string, input: Uncertain, unit: string): Uncertain {
  check.object(name, input);
  check.positive(name, input.value, unit);
  check.nonNegative(`uncertainty of the ${name}`, input.u, unit);
  return input;
}

/** A machine's share above this deserves a stiffer frame [1]. */
const LARGE_SHARE = 0.2;

/**
 * A specimen's own compliance: what was measured less the machine's share.
 *
 * Formula: C = Cmeasured − Cm; u² = u²(Cmeasured) + u²(Cm)
 *
 * Range: the same supports and the same kind of load. Specimens corrected with one bar share its
 * error; `rigiditiesFromTests` takes it by the name `machine` and counts it once.
 *
 * Source: compliances in series; JCGM 100:2008, 5.1.
 *
 * @param measured Slope of deflection on total load, machine included [m/N].
 * @param machine The machine's compliance, from `machineCompliance` [m/N].
 * @returns The specimen's compliance with uncertainty, and the machine's share.
 * @throws {InputError} If a compliance is no value with uncertainty, or nothing is left.
 *
 * @example
 * ```ts
 * import { withoutMachine } from "@laminate/notebooks/comparison";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const own = withoutMachine({ value: 1e-4, u: 3e-7 }, { value: 5e-6, u: 4e-7 });
 * assertAlmostEquals(own.value * 1e6, 95, 1e-9);
 * assertAlmostEquals(own.u * 1e7, 5, 1e-9);
 * ```
 */
export function withoutMachine(measured: Uncertain, machine: Uncertain): WithoutMachine {
  positive("measured compliance", measured, "m/N");
  check.object("machine compliance", machine);
  check.finite("machine compliance", machine.value, "m/N");
  check.nonNegative("uncertainty of the machine compliance", machine.u, "m/N");
  const value = check.positive("what the machine leaves", measured.value - machine.value, "m/N");
  const machineShare = check.result("machine's share", machine.value / measured.value);
  return {
    value,
    u: Math.hypot(measured.u, machine.u),
    machineShare,
    notes: machineShare > LARGE_SHARE
      ? [
        `${
          (100 * machineShare).toFixed(0)
        } % of what was read is the machine: put the gauge under ` +
        "the specimen on its own legs, or test a longer span.",
      ]
      : [],
  };
}
