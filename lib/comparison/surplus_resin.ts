import { checksFor } from "../check/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import { BUDGET, namesInCommon } from "./_in_common.ts";
import type { WeighedRecord } from "./weighed_parts.ts";

const check = checksFor("add up the surplus resin");

/**
 * Resin beyond the fraction aimed at, of several parts together. What parts have in common, the
 * areal weight of one roll, say, is wrong for all of them alike and does not average out; scale and
 * sides were read anew for each part.
 *
 * A part that is short of resin counts against the sum: nothing is clipped, for that would turn
 * chance into surplus.
 *
 * Formula: s = Σ sj; u² = Σi (Σj ∂sj/∂xi)² u²(xi) over common inputs xi + Σj Σk (∂sj/∂xk u(xk))²
 * over each part's own
 *
 * Range: parts of one roll of each cloth, one batch of resin, one kind of each core.
 *
 * Source: JCGM 100:2008, 5.2 and F.1.2.3.
 *
 * @param parts Weighed parts, from `weighedRecord`.
 * @returns Resin in all beyond what was aimed at, with its standard uncertainty [kg].
 * @throws {InputError} If there is no part, or an entry is no weighed part.
 *
 * @example
 * ```ts
 * import { surplusResin, weighedRecord } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const { weighings } = await readPart("data/sole-panels");
 * const panel = weighedRecord(weighings!.find(({ part }) => part === "panel 2")!);
 * const { value, u } = surplusResin([panel, panel]);
 * assert(value === 2 * panel.weighed.surplusResin.value);
 * assert(u > Math.SQRT2 * panel.weighed.surplusResin.u);
 * ```
 */
export function surplusResin(parts: readonly WeighedRecord[]): Uncertain {
  check.shape("parts", parts, [{ record: "object", weighed: "object" }]);
  const common = new Map<string, number>();
  let value = 0, own = 0;
  for (const { record, weighed: { surplusResin } } of check.list("parts", parts)) {
    check.shape("surplus resin", surplusResin, BUDGET);
    value += surplusResin.value;
    const inCommon = namesInCommon(check, record);
    for (const { name, contribution } of surplusResin.budget) {
      const shared = inCommon(name);
      if (shared === undefined) own += contribution ** 2;
      else common.set(shared, (common.get(shared) ?? 0) + contribution);
    }
  }
  return check.results({ value, u: Math.hypot(Math.sqrt(own), ...common.values()) });
}
