import type { Fault } from "../check/mod.ts";
import {
  choiceColumn,
  type Columns,
  type Filled,
  noteColumn,
  numberColumn,
  type TextColumn,
  textColumn,
} from "./column.ts";
import type { LayupRecord, Layups } from "./layups.ts";
import { byLine, defined, layupColumn, type PartContext, type PartFile } from "./_part_file.ts";
import { checkTable } from "./table.ts";

/** How a coupon was broken. */
export type CouponTest = "tension" | "compression";

/** A coupon that was broken along x. */
export interface CouponRecord {
  /** Its name. */
  readonly coupon: string;
  /** The lay-up schedule it was cut from. */
  readonly layup: LayupRecord;
  /** How it was broken. */
  readonly test: CouponTest;
  /** Width [m]. */
  readonly width: number;
  /** Thickness [m]. */
  readonly thickness: number;
  /** Load at which it broke [N]. */
  readonly breakingLoad: number;
  /** Remark. */
  readonly note?: string;
}

const columnsFor = (layup: Filled<TextColumn>) =>
  ({
    coupon: textColumn(),
    layup,
    test: choiceColumn("tension", "compression"),
    width: numberColumn("length", { above: 0 }),
    thickness: numberColumn("thickness", { above: 0 }),
    breaking_load: numberColumn("force", { above: 0 }),
    note: noteColumn(),
  }) as const;

/** The columns of its table. */
export const couponColumns: (layup: Filled<TextColumn>) => Columns = columnsFor;

const file = "coupons.csv";

/** Reads the coupons that were broken. */
export function readCoupons(
  content: Uint8Array | string,
  { decimal, layups, names }: Layups & Pick<PartContext, "decimal">,
): PartFile<readonly CouponRecord[]> {
  const columns = columnsFor(layupColumn(names));
  const { table, faults: found } = checkTable(content, { file, columns, ...defined({ decimal }) });
  const faults: Fault[] = [...found];
  const seen = new Map<string, number>();
  const records = table.rows.flatMap((row, i): CouponRecord[] => {
    const line = table.lines[i]!;
    const earlier = seen.get(row.coupon);
    if (earlier === undefined) seen.set(row.coupon, line);
    else {
      faults.push({
        file,
        line,
        argument: table.headings.get("coupon") ?? "coupon",
        value: row.coupon,
        wanted: `must be a name of its own: line ${earlier} has it too`,
      });
    }
    const layup = layups.get(row.layup);
    if (layup === undefined) return [];
    const { coupon, test, width, thickness, breaking_load: breakingLoad, note } = row;
    return [defined({ coupon, layup, test, width, thickness, breakingLoad, note })];
  });
  return { content: Object.freeze(records), faults: byLine(faults), notes: table.notes };
}
