import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { type LineBeam, type SectionPart, transformedSection } from "../sandwich/mod.ts";
import { layerParts, shearStiffnessOf } from "./_member_section.ts";

const check = checksFor("compute the members");

/** A part of a member that runs along a panel, from bearer to bearer. */
export interface MemberPart extends SectionPart {
  /** Shear modulus along the member and upwards; 0 where it carries no shear [Pa]. */
  readonly G: number;
}

/** A panel that spans along x, for members to be fixed on. */
export interface MemberPanel {
  /** Its stack, with a core inside. */
  readonly stack: Stack;
  /** Length of the span [m]. */
  readonly length: number;
  /** Width of the panel [m]. */
  readonly width: number;
}

/** A bar, a fin or an edge turned up, along a panel. */
export interface PanelMember {
  /** What it is, for tables. */
  readonly name: string;
  /** Where it lies across the panel: 0 and the width for its edges [m]. */
  readonly at: number;
  /** Parts on the bag side, heights from the panel's mould side. */
  readonly parts: readonly MemberPart[];
}

/** Share of the span that bends along with a member on each side of it. */
const ALONG = 0.1;

/**
 * Bars, fins and turned-up edges of a panel as beams along lines, each where it sits, to be given
 * to `solvePanel` with the panel: for how far it bends, wherever a load stands.
 *
 * Formula: EI = D with member − D without, D the transformed section of a tenth of the span on each
 * side of the line, to the panel's edge or half-way to the next member at most; GA = S with − S
 * without, 1/S = ∫ Q²/(D² Σ G b) dz, Q = ∫ E z dA above z, each part as wide as its area over its
 * height
 *
 * Range: members bonded all along and held at the panel's ends. Beside 216 computations with forces
 * in the panel's plane and members that turn on their own (glass; a fin in the middle or two edges
 * turned up) a heel sinks up to 5 % deeper than this at worst, by 1 % or less in 95 of 100, and up
 * to 9 % less. Polynomials add to the unsafe side: at degree 16 of `solvePanel` 0.5 % on foam of G
 * 27 MPa, up to 4 % on 5 MPa; at degree 12 up to 6 %. A fifth of the span on each side, as often
 * taken, is unsafe: 13 % at worst. Twist of the member is left out, on the safe side. Not counted,
 * and unsafe: a thin member whose free rim is pressed buckles sideways; one that ends short of its
 * bearer peels.
 *
 * Source: Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells (1959), chapter 6 (plate on
 * beams); shear by energy, any text on strength of materials; both from memory. A tenth: found by
 * that computation.
 *
 * @param panel Stack, span and width [m].
 * @param members Parts and place of each, at places apart.
 * @returns A beam for each: EI [N·m²], GA [N], mass for each metre [kg/m].
 * @throws {InputError} If the stack has no core inside, a member lies off the panel or at another's
 * place, is too soft in shear to bend along, or a size or modulus cannot be meant.
 *
 * @example
 * ```ts
 * import { layupStack, memberBeams } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { slabPart } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const panel = { stack: layupStack(layups.get("sole")!), length: 0.6, width: 0.4 };
 * const strip = slabPart("strip", { E: 18e9, density: 1800 }, {
 *   width: 0.002, bottom: 0.0108, top: 0.0408,
 * });
 * const parts = [{ ...strip, G: 3e9 }];
 * const [left, right] = memberBeams(panel, [
 *   { name: "left edge", at: 0, parts },
 *   { name: "right edge", at: 0.4, parts },
 * ]);
 * assert(left!.bending > 18e9 * 0.002 * 0.03 ** 3 / 12);
 * assert(Math.abs(right!.bending / left!.bending - 1) < 1e-12);
 * ```
 */
export function memberBeams(
  panel: MemberPanel,
  members: readonly PanelMember[],
): readonly LineBeam[] {
  check.object("panel", panel);
  const length = check.positive("length", panel.length, "m");
  const width = check.positive("width", panel.width, "m");
  check.list("members", members, 0).forEach((member, i) => checkMember(member, i, width));
  return Object.freeze(members.map((member, i) => {
    const others = members.filter((_, k) => k !== i).map(({ at }) => at);
    return beamOf(member, layerParts(panel.stack, widthAlong(member, others, { length, width })));
  }));
}

/** Width of the panel that bends along with a member, between its neighbours. */
function widthAlong(
  { name, at }: PanelMember,
  others: readonly number[],
  { length, width }: { readonly length: number; readonly width: number },
): number {
  if (others.includes(at)) {
    check.refuse(`place of ${name}`, at, "must be its own: give parts at one place as one member");
  }
  const halfWay = others.map((y) => (y + at) / 2);
  const low = Math.max(0, at - ALONG * length, ...halfWay.filter((y) => y < at));
  const high = Math.min(width, at + ALONG * length, ...halfWay.filter((y) => y > at));
  return check.positive(`width along ${name}`, high - low, "m");
}

/** What a member adds to the layers that bend along with it. */
function beamOf({ name, at, parts }: PanelMember, layers: readonly MemberPart[]): LineBeam {
  const before = transformedSection(layers);
  const after = transformedSection([...layers, ...parts]);
  const bending = after.flexuralRigidity - before.flexuralRigidity;
  const shear = shearStiffnessOf([...layers, ...parts]) - shearStiffnessOf(layers);
  const mass = parts.reduce((sum, { area, density }) => sum + area * density, 0);
  return Object.freeze({
    name,
    along: "x",
    at,
    bending: check.positive(`flexural rigidity of ${name}`, bending, "N·m²"),
    // Below 0 the member shears off more than it holds, and would not bend with the panel.
    shear: check.nonNegative(`shear stiffness added by ${name}`, shear, "N"),
    massPerLength: check.result("mass", mass, "kg/m"),
  });
}

function checkMember(member: PanelMember, i: number, width: number): void {
  check.object(`member ${i + 1}`, member);
  const name = check.text(`name of member ${i + 1}`, member.name);
  check.within(`place of ${name}`, member.at, { min: 0, max: width, unit: "m" });
  check.list(`parts of ${name}`, member.parts).forEach((part, k) => {
    check.object(`part ${k + 1} of ${name}`, part);
    const own = check.text(`name of part ${k + 1} of ${name}`, part.name);
    check.nonNegative(`shear modulus of ${own}`, part.G, "Pa");
    check.finite(`low of ${own}`, part.low, "m");
    check.positive(`depth of ${own}`, part.high - part.low, "m");
  });
}
