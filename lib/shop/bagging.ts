import { checksFor } from "../check/mod.ts";
import type { ThreePoint } from "./cost_plan.ts";

const check = checksFor("plan the bag");

/** Bagging, the leak-down test included; common practice, no source [s]. */
export const USUAL_BAGGING: ThreePoint = { low: 2400, likely: 3600, high: 7200 };

/** A part under vacuum, by the rectangle around it. */
export interface BaggedPart {
  /** Length [m]. */
  readonly length: number;
  /** Width [m]. */
  readonly width: number;
  /** Height of part and mould above the flange; 0 for a flat panel [m]. */
  readonly height: number;
  /** Whether the bag is taped to the mould, or wraps part and mould all around. */
  readonly style: "on the mould" | "envelope";
  /** How far peel ply, film and breather reach beyond the part [m]. */
  readonly margin: number;
  /** How far the tape line lies outside the part [m]. */
  readonly flange: number;
  /** Extra bag film each way so that it can follow the part, a share of its size [1]. */
  readonly pleatShare: number;
  /** Pleats stood up in the tape line [1]. */
  readonly pleats: number;
  /** Tape in one pleat, up and down [m]. */
  readonly tapePerPleat: number;
  /** Spare on every length from a roll: cutting, mistakes, a share [1]. */
  readonly spareShare: number;
}

/** One consumable of the bag. */
export interface BagLayer {
  /** What it is. */
  readonly name: "peel ply" | "perforated film" | "breather" | "bag film";
  /** Length of the piece [m]. */
  readonly length: number;
  /** Width of the piece; a roll narrower than this is joined [m]. */
  readonly width: number;
  /** Area to take off the roll, spare included [m²]. */
  readonly area: number;
}

/** What goes over the part, from the part up, and the tape around it. */
export interface BagPlan {
  /** Layers in the order in which they are laid on the part. */
  readonly layers: readonly BagLayer[];
  /** Area inside the tape line, on which the air presses [m²]. */
  readonly tapedArea: number;
  /** Sealant tape, pleats and spare included [m]. */
  readonly tapeLength: number;
  /** What to do in which order. */
  readonly order: readonly string[];
  /** Honest limits. */
  readonly notes: readonly string[];
}

/**
 * Peel ply, perforated film, breather, bag film and sealant tape for a part under vacuum.
 *
 * Formula: layers (L + 2h + 2m)(W + 2h + 2m)(1 + spare); bag (L + 2h + 2f)(1 + pleat) each way,
 * twice for an envelope; tape [2(L + W + 4f) + pleats × tape](1 + spare) around (L + 2f)(W + 2f)
 *
 * Range: shares 0 to 1.
 *
 * Source: geometry; order of the bag: common practice, no source. A home-made bag leaks at its tape
 * corners and pleats first, and thin film pricks on glass ends.
 *
 * @param part Sizes [m], style, margins and shares.
 * @returns Layers from the part up, tape [m] and the order of work.
 * @throws {InputError} If a size is below 0, length or width not above 0, or a share above 1.
 *
 * @example
 * ```ts
 * import { planBag } from "@laminate/notebooks/shop";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const plan = planBag({
 *   length: 1, width: 0.5, height: 0, style: "on the mould", margin: 0.05, flange: 0.1,
 *   pleatShare: 0.2, pleats: 4, tapePerPleat: 0.2, spareShare: 0,
 * });
 * assertAlmostEquals(plan.tapeLength, 2 * 1.9 + 0.8, 1e-12);
 * assertAlmostEquals(plan.layers[3]!.area, 1.44 * 0.84, 1e-12);
 * ```
 */
export function planBag(part: BaggedPart): BagPlan {
  checkPart(part);
  const { length, width, height, style, margin, flange, pleatShare, spareShare } = part;
  const sides = style === "envelope" ? 2 : 1;
  const layer = (name: BagLayer["name"]): BagLayer => {
    const isBag = name === "bag film";
    const beyond = 2 * height + 2 * (isBag ? flange : margin);
    const stretch = isBag ? 1 + pleatShare : 1;
    const piece = {
      length: (length + beyond) * stretch * (isBag ? sides : 1),
      width: (width + beyond) * stretch,
    };
    const area = check.result("area", piece.length * piece.width * (1 + spareShare), "m²");
    return { name, ...piece, area };
  };
  const tapeLine = 2 * (length + width + 4 * flange);
  const tape = (tapeLine + part.pleats * part.tapePerPleat) * (1 + spareShare);
  return {
    layers: (["peel ply", "perforated film", "breather", "bag film"] as const).map(layer),
    tapedArea: check.result("taped area", (length + 2 * flange) * (width + 2 * flange), "m²"),
    tapeLength: check.result("tape", tape, "m"),
    order: BAGGING_ORDER,
    notes: LIMITS,
  };
}

/** Common practice, no source. */
const BAGGING_ORDER: readonly string[] = [
  "Tape on the clean, dry flange before resin comes near it; leave its paper on.",
  "Peel ply over the wet laminate, without bridges in corners.",
  "Perforated film, then breather right up to the vacuum port, with a pad of it under the port.",
  "Bag film from the middle outwards, slack into every corner, pleats where it has too much.",
  "Pull a little vacuum, move the slack where it bridges, then pull all of it.",
  "Shut the pump off and read the gauge twice, five minutes apart: the leak-down test.",
  "Hiss: listen and press the tape, corners and pleats first. Then leave it under vacuum overnight.",
];

/** Common practice, no source. */
const LIMITS: readonly string[] = [
  "A home-made bag holds less than the air outside; plan with what its gauge showed last time.",
  "Vacuum draws air out of resin only while it is thin; it does not mend a dry spot.",
];

function checkPart(part: BaggedPart): void {
  check.object("part", part);
  check.positive("length", part.length, "m");
  check.positive("width", part.width, "m");
  check.nonNegative("height", part.height, "m");
  check.oneOf("style", part.style, ["on the mould", "envelope"]);
  check.nonNegative("margin", part.margin, "m");
  check.nonNegative("flange", part.flange, "m");
  check.fraction("share for pleats", part.pleatShare);
  check.count("pleats", part.pleats);
  check.nonNegative("tape in a pleat", part.tapePerPleat, "m");
  check.fraction("spare", part.spareShare);
}
