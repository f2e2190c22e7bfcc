import { checksFor } from "../check/mod.ts";
import type { Stack } from "../materials/mod.ts";
import { type PanelStiffness, panelStiffness, sectionFromStack } from "../sandwich/mod.ts";

const check = checksFor("compute the curved panel");

/**
 * A panel that is curved across its width: its rise makes it stiff along, as a shallow shell that
 * keeps its shape.
 *
 * Formula: D11 + A11b f² 4/45, a parabola of rise f over the width; A11b the faces' and core's E A
 * for each metre of width
 *
 * Range: rise up to a tenth of the width; ends held to the curve; the load spread over the width.
 * Unsafe for a heel: under it the curve flattens, and the panel sinks further than this, up to what
 * it would flat. No cure for a heel may be chosen by it.
 *
 * Source: second moment of a parabolic arc, derived: mean of (f(1 − 4y²/b²) − 2f/3)².
 *
 * @param stack The panel's stack, with a core inside.
 * @param curve Rise and width [m].
 * @returns Stiffness for each metre of width.
 * @throws {InputError} If the rise is below 0 or above a tenth of the width.
 *
 * @example
 * ```ts
 * import { curvedPanel, layupStack } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { panelStiffness } from "@laminate/notebooks/sandwich";
 * import { assert, assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const stack = layupStack(layups.get("sole")!);
 * assertEquals(curvedPanel(stack, { rise: 0, width: 0.4 }).D11, panelStiffness(stack).D11);
 * assert(curvedPanel(stack, { rise: 0.02, width: 0.4 }).D11 > panelStiffness(stack).D11);
 * ```
 */
export function curvedPanel(
  stack: Stack,
  curve: {
    /** Rise of the middle over the edges [m]. */
    readonly rise: number;
    /** Width [m]. */
    readonly width: number;
  },
): PanelStiffness {
  check.object("curve", curve);
  const width = check.positive("width", curve.width, "m");
  const rise = check.within("rise", curve.rise, { min: 0, max: width / 10, unit: "m" });
  const plain = panelStiffness(stack);
  const { layers } = sectionFromStack(stack, { width: 1 });
  const EA = layers.reduce((sum, { E, thickness }) => sum + E * thickness, 0);
  return Object.freeze({
    ...plain,
    D11: check.result("D11", plain.D11 + EA * rise ** 2 * 4 / 45, "N·m"),
    // The arc is longer than its chord.
    massPerArea: plain.massPerArea * (1 + 8 / 3 * (rise / width) ** 2),
  });
}
