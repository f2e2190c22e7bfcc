import type { Catalogue } from "./catalogue.ts";
import { type Columns, textColumn } from "./column.ts";
import { couponColumns } from "./coupons.ts";
import { columns as filletColumns } from "./fillets.ts";
import { layupColumns } from "./layups.ts";
import { loadTestColumns } from "./load_tests.ts";
import { mountColumns } from "./mounts.ts";
import { puttyColumns } from "./putty.ts";
import { settingsColumns, settingsFile } from "./settings.ts";
import { weighingColumns } from "./weighings.ts";
import { workshopColumns } from "./workshop.ts";

/** The columns that each table of a part folder may have, as its reader asks for them. */
export function partColumns(catalogue: Catalogue): Readonly<Record<string, Columns>> {
  const layup = textColumn();
  return {
    "layup.csv": layupColumns(catalogue),
    "weighings.csv": weighingColumns(layup),
    "load_tests.csv": loadTestColumns(layup),
    "coupons.csv": couponColumns(layup),
    "putty.csv": puttyColumns(catalogue),
    "fillets.csv": filletColumns,
    "workshop.csv": workshopColumns(catalogue),
    "mounts.csv": mountColumns(layup),
    [settingsFile]: settingsColumns,
  };
}
