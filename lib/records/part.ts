import { checksFor, type Fault, InputError } from "../check/mod.ts";
import { type Catalogue, catalogueFiles, checkCatalogue } from "./catalogue.ts";
import { type CouponRecord, readCoupons } from "./coupons.ts";
import { type FilletRecord, readFillets } from "./fillets.ts";
import { type LayupRecord, readLayups } from "./layups.ts";
import { type LoadTestRecord, readLoadTests } from "./load_tests.ts";
import type { DecimalSign } from "./number_cell.ts";
import { defined, type PartFile } from "./_part_file.ts";
import { type PuttyRecord, readPutty } from "./putty.ts";
import { readWeighings, type WeighingRecord } from "./weighings.ts";

/** Everything that is recorded of a part. */
export interface PartRecord {
  /** Its name: that of its folder. */
  readonly name: string;
  /** The materials, the builder's own rows included. */
  readonly catalogue: Catalogue;
  /** The lay-up schedules by name, in the order of the file. */
  readonly layups: ReadonlyMap<string, LayupRecord>;
  /** The weighings, if there are any. */
  readonly weighings?: readonly WeighingRecord[];
  /** The load tests, if there are any. */
  readonly loadTests?: readonly LoadTestRecord[];
  /** The coupons that were broken, if there are any. */
  readonly coupons?: readonly CouponRecord[];
  /** The putty batches, if there are any. */
  readonly putty?: readonly PuttyRecord[];
  /** The fillets, if there are any. */
  readonly fillets?: readonly FilletRecord[];
  /** What the reader should know: files that are not there, rows left out, and the like. */
  readonly notes: readonly string[];
}

/** The tables of a part, as they are in its folder. */
export interface PartSource {
  /** Name of the part. */
  readonly name: string;
  /** The tables by file name: `layup.csv`, and in `materials/` the builder's own rows. */
  readonly files: ReadonlyMap<string, Uint8Array | string>;
  /** The materials catalogue. */
  readonly catalogue: Catalogue;
  /** The decimal sign; found out for each file if left out. */
  readonly decimal?: DecimalSign;
}

const check = checksFor("read the part");
const layupFile = "layup.csv";
const optionalFiles = ["weighings.csv", "load_tests.csv", "putty.csv", "fillets.csv"] as const;
/** Most crews break no coupons: that this table is missing is not worth a note. */
const couponsFile = "coupons.csv";
const ownMaterials = "materials/";

/** The tables of a part folder. */
export const partFiles: readonly string[] = Object.freeze([
  layupFile,
  ...optionalFiles,
  couponsFile,
  ...catalogueFiles.map((file) => `${ownMaterials}${file}`),
]);

/**
 * Everything that is recorded of a part, from the tables of its folder; each name that one table
 * takes from another is checked.
 *
 * Figures are brought to SI by the unit in their heading
 *
 * Range: `layup.csv` must be there; each other table may be missing, which a note says
 *
 * @param source The tables, and the catalogue.
 * @returns The part.
 * @throws {InputError} If anything in a table is wrong: all faults of all tables at once.
 *
 * @example
 * ```ts
 * import { partFromFiles, readCatalogue } from "@laminate/notebooks/records";
 * import { assertEquals } from "@std/assert";
 *
 * const files = new Map([[
 *   "layup.csv",
 *   "layup,layer,material,resin,angle_deg,thickness_mm\n" +
 *   "sole,1,glass plain 100,epoxy laminating slow,0,\n" +
 *   "sole,2,PVC foam 60,,0,10\n",
 * ]]);
 * const part = partFromFiles({ name: "sole", files, catalogue: await readCatalogue() });
 * const [cloth, core] = part.layups.get("sole")?.layers ?? [];
 * assertEquals(cloth?.kind, "reinforcement");
 * assertEquals(core?.kind === "core" && core.thickness, 0.01);
 * ```
 */
export function partFromFiles(source: PartSource): PartRecord {
  const { files, decimal } = check.object("source", source);
  check.object("catalogue", source.catalogue);
  if (!(files instanceof Map)) return check.refuse("files", files, "must be a Map by file name");
  const faults: Fault[] = [];
  const notes: string[] = [];
  const gather = <Content>(file: PartFile<Content>): Content => {
    faults.push(...file.faults);
    notes.push(...file.notes);
    return file.content;
  };

  const own = checkCatalogue({
    files: ownTables(files),
    prefix: ownMaterials,
    base: source.catalogue,
  });
  const { catalogue } = own;
  gather({ content: undefined, ...own });

  const layup = files.get(layupFile);
  if (layup === undefined) {
    const wanted = `must be in the folder; it has: ${[...files.keys()].join(", ") || "no tables"}`;
    faults.push({ argument: layupFile, value: undefined, wanted });
  }
  const context = { catalogue, ...defined({ decimal }) };
  const layups = layup === undefined ? undefined : gather(readLayups(layup, context));
  // Without schedules nothing can be said about the names in the other tables.
  const schedules = { ...context, ...(layups ?? { layups: new Map(), names: undefined }) };
  const read = <Content>(
    file: (typeof optionalFiles)[number],
    reader: (content: Uint8Array | string) => PartFile<Content>,
  ): Content | undefined => {
    const content = files.get(file);
    if (content !== undefined) return gather(reader(content));
    notes.push(`there is no ${file}`);
    return undefined;
  };
  const weighings = read("weighings.csv", (content) => readWeighings(content, schedules));
  const loadTests = read("load_tests.csv", (content) => readLoadTests(content, schedules));
  const couponRows = files.get(couponsFile);
  const coupons = couponRows === undefined ? undefined : gather(readCoupons(couponRows, schedules));
  const putty = read("putty.csv", (content) => readPutty(content, context));
  const fillets = read("fillets.csv", (content) => readFillets(content, context));

  for (const file of files.keys()) {
    if (!partFiles.includes(file)) {
      notes.push(`${file} is not read: it is none of the known tables`);
    }
  }
  if (faults.length > 0) throw new InputError(`read the part ${source.name}`, faults);
  return defined({
    name: source.name,
    catalogue,
    layups: layups?.layups ?? new Map<string, LayupRecord>(),
    weighings,
    loadTests,
    coupons,
    putty,
    fillets,
    notes: Object.freeze(notes),
  });
}

function ownTables(
  files: ReadonlyMap<string, Uint8Array | string>,
): ReadonlyMap<string, Uint8Array | string> {
  return new Map(
    [...files].filter(([file]) => file.startsWith(ownMaterials))
      .map(([file, content]) => [file.slice(ownMaterials.length), content]),
  );
}
