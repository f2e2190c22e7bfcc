import { checksFor } from "../check/mod.ts";

const check = checksFor("list the cautions");

/** Operations that can hurt someone. */
export type RiskyOperation =
  | "mixing resin"
  | "mixing filler"
  | "laying up"
  | "bagging"
  | "curing"
  | "demoulding"
  | "cutting and drilling"
  | "sanding"
  | "painting"
  | "cleaning"
  | "loading";

/** What to heed at one operation. */
export interface OperationCautions {
  /** The operation. */
  readonly operation: RiskyOperation;
  /** What can happen, and what keeps it from happening. */
  readonly cautions: readonly string[];
}

/** What stands above every list of cautions. */
export const GENERAL_CAUTION: string =
  "The safety sheet of each product, local rules and the event's rules decide; this list does not " +
  "replace them. Whoever coughs, itches or feels unwell stops and tells the others.";

const CAUTIONS: Readonly<Record<RiskyOperation, readonly string[]>> = {
  "mixing resin": [
    "Resin and hardener can make the skin allergic, each by itself and for life: no bare skin, " +
    "fresh gloves, no resin on tools that others touch.",
    "Goggles on: a splash of hardener burns the eye. Rinse at once and for long, then see a doctor.",
    "A full pot heats itself and can smoke or burn: small batches, wide trays, nothing left standing.",
    "Peroxide catalysts and accelerators never meet undiluted: that mixture explodes.",
  ],
  "mixing filler": [
    "Light filler and fume float for hours and scar lungs: respirator on before the bag is opened, " +
    "fold the powder in slowly.",
    "Filled resin keeps its heat in: a cup of putty gets hotter than a cup of resin.",
  ],
  "laying up": [
    "Long sleeves, gloves, eyes covered; wash with soap and water, never with solvent.",
    "Fumes want moving air. Styrene resins want a respirator with the right cartridge as well.",
    "Know who mixes, who lays and who stops the work; resin that warms in the pot is not used.",
  ],
  "bagging": [
    "A bag presses with tonnes: never on a closed, thin-walled mould or box that was not made for " +
    "it, never a hand between.",
    "Keep resin out of the pump: a trap in the line, and the pump's hot exhaust away from solvent.",
  ],
  "curing": [
    "Heat only with gentle warmth and somebody there: lamps and blankets start fires.",
    "A thick wet part or a pool of resin under the bag heats itself; feel it in the first hours.",
    "A resin softens not far above the warmest of its cure: no sun, dark paint or load while hot " +
    "before the post-cure of its sheet.",
  ],
  "demoulding": [
    "Cured edges cut like glass, for they are: gloves and goggles, wedges of wood, no prying " +
    "towards a hand.",
    "A fresh part is soft and still sensitises: gloves until it is washed.",
  ],
  "cutting and drilling": [
    "Dust of cured glass and carbon: respirator, goggles, extraction at the tool. Carbon dust also " +
    "shorts electrical gear.",
    "A grinder throws sparks: no solvent, rags, foam dust or dry breather near it; look again for " +
    "smouldering an hour later.",
    "Clamp the work. A bit snatches when it breaks through a thin skin.",
  ],
  "sanding": [
    "Dust of filler and resin harms lungs and can sensitise, more so when not fully cured: wet " +
    "where it can be, else respirator and extraction; wash before eating.",
    "Fine dust in the air can flash: no sparks, bag it up, clothes off before going home.",
  ],
  "painting": [
    "Two-part paints with isocyanate can cause asthma from one breath: spraying them is for people " +
    "with supplied air and training; a cartridge mask does not do.",
    "Solvent vapour burns and numbs: moving air, no flame, no pilot light, no switch that sparks.",
  ],
  "cleaning": [
    "Solvents pass through gloves and skin and carry resin with them: never for washing hands.",
    "Rags with resin, hardener or drying oil heat up in a heap: spread them out or drown them.",
  ],
  "loading": [
    "Nobody under or beside a loaded part; stops that catch it; eyes covered, for it goes with a " +
    "bang and splinters.",
    "Load by steps and wait at each; a crackle is a warning. A computed strength is a guess until " +
    "a test has been passed, and a licensed person signs where somebody's life hangs on it.",
  ],
};

/** Every operation that has cautions. */
export const RISKY_OPERATIONS: readonly RiskyOperation[] = Object.keys(
  CAUTIONS,
) as RiskyOperation[];

/**
 * The usual cautions for the operations of a day, in the order given, each once.
 *
 * Range: the operations of `RISKY_OPERATIONS`.
 *
 * Source: common practice, no source; the products' safety sheets and local rules decide.
 *
 * @param operations What is done that day.
 * @returns One entry for each operation; print `GENERAL_CAUTION` above them.
 * @throws {InputError} If the list is empty or an operation unknown.
 *
 * @example
 * ```ts
 * import { cautionsFor } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * const cautions = cautionsFor(["mixing resin", "laying up", "mixing resin"]);
 * assertEquals(cautions.map(({ operation }) => operation), ["mixing resin", "laying up"]);
 * ```
 */
export function cautionsFor(operations: readonly RiskyOperation[]): readonly OperationCautions[] {
  check.list("operations", operations);
  return [...new Set(operations)].map((operation) => {
    check.oneOf("operation", operation, RISKY_OPERATIONS);
    return { operation, cautions: CAUTIONS[operation] };
  });
}
