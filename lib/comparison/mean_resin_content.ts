import { checksFor } from "../check/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import { BUDGET, namesInCommon } from "./_in_common.ts";
import type { WeighedRecord } from "./weighed_parts.ts";

const check = checksFor("average the resin content");

/** Resin content of several parts. */
export interface MeanResinContent extends Uncertain {
  /** What chance leaves in it: the scatter of the parts over √n; of one part, its own u [1]. */
  readonly uScatter: number;
  /** What the parts have in common, and no number of parts averages out: a roll's weight, say [1]. */
  readonly uCommon: number;
}

/**
 * Mean resin content of several parts, with the uncertainty both of their scatter and of what they
 * have in common.
 *
 * Formula: mean of cj; u² = s²/n + Σi (Σj ∂cj/∂xi u(xi)/n)² over common inputs xi
 *
 * Range: parts of one roll of each cloth and one batch of resin. Of two or three parts s is itself
 * known only roughly.
 *
 * Source: JCGM 100:2008, 4.2.3 and F.1.2.3.
 *
 * @param parts Weighed parts, from `weighedRecord`; each with a laminate.
 * @returns Mean with standard uncertainty, and the two parts of that [1].
 * @throws {InputError} If there is no part, or an entry is no weighed part with a laminate.
 *
 * @example
 * ```ts
 * import { meanResinContent, weighedRecord } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assertAlmostEquals } from "@std/assert";
 *
 * const { weighings } = await readPart("data/sole-panels");
 * const byHand = weighings!.filter(({ process }) => process === "hand").map(weighedRecord);
 * assertAlmostEquals(meanResinContent(byHand).uScatter, 0.046, 1e-3);
 * ```
 */
export function meanResinContent(parts: readonly WeighedRecord[]): MeanResinContent {
  check.shape("parts", parts, [{ record: "object", weighed: "object" }]);
  const common = new Map<string, number>();
  const contents = check.list("parts", parts).map(({ record, weighed: { fibreMassFraction } }) => {
    check.shape("fibre mass fraction", fibreMassFraction, BUDGET);
    const { value, u, budget } = fibreMassFraction!;
    const inCommon = namesInCommon(check, record);
    let own = u ** 2;
    for (const { name, contribution } of budget) {
      const shared = inCommon(name);
      if (shared === undefined) continue;
      own -= contribution ** 2;
      common.set(shared, (common.get(shared) ?? 0) - contribution);
    }
    return { value: 1 - value, own };
  });
  const count = contents.length;
  const value = contents.reduce((sum, content) => sum + content.value, 0) / count;
  const squares = contents.reduce((sum, content) => sum + (content.value - value) ** 2, 0);
  const uScatter = count === 1
    ? Math.sqrt(Math.max(0, contents[0]!.own))
    : Math.sqrt(squares / (count - 1) / count);
  const uCommon = Math.hypot(...common.values()) / count;
  return check.results({ value, u: Math.hypot(uScatter, uCommon), uScatter, uCommon });
}
