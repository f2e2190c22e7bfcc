import { checksFor, type Fault, InputError } from "../check/mod.ts";
import { type Catalogue, catalogueFiles, checkCatalogue } from "./catalogue.ts";
import { checkIsCatalogue } from "./_catalogue_columns.ts";
import { type CouponRecord, readCoupons } from "./coupons.ts";
import { type FilletRecord, readFillets } from "./fillets.ts";
import { type LayupRecord, type Layups, readLayups } from "./layups.ts";
import { type LoadTestRecord, readLoadTests } from "./load_tests.ts";
import type { DecimalSign } from "./number_cell.ts";
import { type MountRecord, readMounts } from "./mounts.ts";
import { defined, type PartContext, type PartFile } from "./_part_file.ts";
import { type PuttyRecord, readPutty } from "./putty.ts";
import { settingsFile } from "./settings.ts";
import { readWeighings, type WeighingRecord } from "./weighings.ts";
import { readWorkshop, type WorkshopRecord } from "./workshop.ts";

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
  /** How the crew works with each resin, if it is written down. */
  readonly workshop?: readonly WorkshopRecord[];
  /** The bolted mounts, if there are any. */
  readonly mounts?: readonly MountRecord[];
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
/** A note says which of these are missing. */
const expectedFiles: readonly string[] = [
  "weighings.csv",
  "load_tests.csv",
  "putty.csv",
  "fillets.csv",
];
/** Many crews have no need of these: that one is missing is not worth a note. */
const couponsFile = "coupons.csv";
const workshopFile = "workshop.csv";
const mountsFile = "mounts.csv";
const ownMaterials = "materials/";

/** The tables of a part folder. */
export const partFiles: readonly string[] = Object.freeze([
  layupFile,
  ...expectedFiles,
  couponsFile,
  workshopFile,
  mountsFile,
  settingsFile,
  ...catalogueFiles.map((file) => `${ownMaterials}${file}`),
]);

/**
 * Everything that is recorded of a part, from the tables of its folder; each name that one table
 * takes from another is checked.
 *
 * Figures are brought to SI by the unit in their heading.
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
  const { name, files, decimal } = check.object("source", source);
  if (typeof name !== "string") return check.refuse("name", name, "must be text");
  if (!(files instanceof Map)) return check.refuse("files", files, "must be a Map by file name");
  checkIsCatalogue(source.catalogue);
  const gathered: Gathered = { faults: [], notes: [] };
  const own = checkCatalogue({
    files: ownTables(files),
    prefix: ownMaterials,
    base: source.catalogue,
  });
  const catalogue = gather({ ...own, content: own.catalogue }, gathered);
  const context = { catalogue, ...defined({ decimal }) };
  const layups = layupsOf(files, context, gathered);
  const tables = otherTables(files, { ...context, ...layups }, gathered);
  for (const file of files.keys()) {
    if (partFiles.includes(file)) continue;
    gathered.notes.push(`${file} is not read: it is none of the known tables`);
  }
  const { faults, notes } = gathered;
  if (faults.length > 0) throw new InputError(`read the part ${name}`, faults);
  return defined({
    name,
    catalogue,
    layups: layups.layups,
    ...tables,
    notes: Object.freeze(notes),
  });
}

interface Gathered {
  readonly faults: Fault[];
  readonly notes: string[];
}

function gather<Content>(file: PartFile<Content>, { faults, notes }: Gathered): Content {
  for (const fault of file.faults) faults.push(fault);
  for (const note of file.notes) notes.push(note);
  return file.content;
}

type Files = PartSource["files"];

function layupsOf(files: Files, context: PartContext, gathered: Gathered): Layups {
  const content = files.get(layupFile);
  if (content !== undefined) return gather(readLayups(content, context), gathered);
  const wanted = `must be in the folder; it has: ${[...files.keys()].join(", ") || "no tables"}`;
  gathered.faults.push({ argument: layupFile, value: undefined, wanted });
  // Without schedules nothing can be said about the names in the other tables.
  return { layups: new Map(), names: undefined };
}

type OtherTables = Pick<
  { readonly [Table in keyof PartRecord]-?: PartRecord[Table] | undefined },
  "weighings" | "loadTests" | "coupons" | "putty" | "fillets" | "workshop" | "mounts"
>;

function otherTables(files: Files, context: PartContext & Layups, gathered: Gathered): OtherTables {
  const read = <Content>(
    file: string,
    reader: (content: Uint8Array | string, context: PartContext & Layups) => PartFile<Content>,
  ): Content | undefined => {
    const content = files.get(file);
    if (content !== undefined) return gather(reader(content, context), gathered);
    if (expectedFiles.includes(file)) gathered.notes.push(`there is no ${file}`);
    return undefined;
  };
  return {
    weighings: read("weighings.csv", readWeighings),
    loadTests: read("load_tests.csv", readLoadTests),
    coupons: read(couponsFile, readCoupons),
    putty: read("putty.csv", readPutty),
    fillets: read("fillets.csv", readFillets),
    workshop: read(workshopFile, readWorkshop),
    mounts: read(mountsFile, readMounts),
  };
}

function ownTables(files: Files): Files {
  return new Map(
    [...files].filter(([file]) => file.startsWith(ownMaterials))
      .map(([file, content]) => [file.slice(ownMaterials.length), content]),
  );
}
