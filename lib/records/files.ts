import { basename, fromFileUrl, join } from "@std/path";
import { InputError } from "../check/mod.ts";
import { type Catalogue, catalogueFiles, catalogueFromFiles } from "./catalogue.ts";
import type { DecimalSign } from "./number_cell.ts";
import { partFromFiles, type PartRecord } from "./part.ts";

/** How a part folder is read. */
export interface ReadPartOptions {
  /** The materials catalogue; that of the project if left out. */
  readonly catalogue?: Catalogue;
  /** The decimal sign; found out for each file if left out. */
  readonly decimal?: DecimalSign;
}

/**
 * Everything that is recorded of a part, from its folder.
 *
 * Range: needs permission to read the folder and the materials catalogue
 *
 * @param folder The part's folder.
 * @param options The catalogue and the decimal sign, where the usual ones will not do.
 * @returns The part.
 * @throws {InputError} If the folder is not there, or anything in a table is wrong: all faults of
 * all tables at once.
 *
 * @example
 * ```ts
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const part = await readPart("data/sole-panels");
 * assert(part.layups.size > 0);
 * for (const { layup } of part.weighings ?? []) assert(part.layups.has(layup.name));
 * ```
 */
export async function readPart(
  folder: string | URL,
  options: ReadPartOptions = {},
): Promise<PartRecord> {
  const path = pathOf(folder, "read the part");
  const files = await readFolder(path, "read the part");
  for (const [name, bytes] of await readFolder(join(path, "materials"), undefined)) {
    files.set(`materials/${name}`, bytes);
  }
  const catalogue = options.catalogue ?? await readCatalogue();
  const { decimal } = options;
  const source = { name: await nameOf(path), files, catalogue };
  return partFromFiles(decimal === undefined ? source : { ...source, decimal });
}

/**
 * The materials catalogue, from its folder.
 *
 * Range: needs permission to read the folder
 *
 * @param folder The folder; `data/materials` of the project if left out.
 * @returns The catalogue.
 * @throws {InputError} If the folder or one of its tables is not there, or anything in a table is
 * wrong: all faults of all tables at once.
 *
 * @example
 * ```ts
 * import { readCatalogue } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const { fibres, reinforcements } = await readCatalogue();
 * for (const { fibre } of reinforcements.values()) assert(fibres.has(fibre));
 * ```
 */
export async function readCatalogue(
  folder: string | URL = new URL("../../data/materials/", import.meta.url),
): Promise<Catalogue> {
  const action = "read the materials catalogue";
  const files = await readFolder(pathOf(folder, action), action);
  const missing = catalogueFiles.filter((file) => !files.has(file));
  if (missing.length > 0) {
    throw new InputError(
      action,
      missing.map((argument) => ({ argument, value: undefined, wanted: "must be in the folder" })),
    );
  }
  return catalogueFromFiles({ files });
}

function pathOf(folder: string | URL, action: string): string {
  const path = folder instanceof URL ? fromFileUrl(folder) : folder;
  if (typeof path === "string" && path.trim() !== "") return path;
  throw new InputError(action, [{ argument: "folder", value: path, wanted: "must be a path" }]);
}

/** The folder's name, also where the path ends in `.` or `..`. */
async function nameOf(path: string): Promise<string> {
  const name = basename(path);
  return /^\.{0,2}$/.test(name) ? basename(await Deno.realPath(path)) : name;
}

type Files = Map<string, Uint8Array>;

/**
 * The CSV files of a folder, in the order of their names. A folder that is not there is a fault of
 * the action, or no files where no action is given.
 */
async function readFolder(path: string, action: string | undefined): Promise<Files> {
  const names: string[] = [];
  try {
    for await (const entry of Deno.readDir(path)) {
      if (!entry.isDirectory && /\.csv$/i.test(entry.name)) names.push(entry.name);
    }
  } catch (error) {
    if (action === undefined && error instanceof Deno.errors.NotFound) return new Map();
    throw folderFault(path, action ?? "read the folder", error);
  }
  const files: Files = new Map();
  const stamps = new Map<string, string>();
  for (const name of names.sort()) {
    const file = join(path, name);
    try {
      stamps.set(file, await stampOf(file));
      files.set(name, await Deno.readFile(file));
    } catch (error) {
      throw folderFault(file, action ?? "read the folder", error);
    }
  }
  for (const [file, stamp] of stamps) {
    if (await stampOf(file).catch(() => undefined) === stamp) continue;
    const wanted = "must stay as it is while the folder is read: it was just changed, try again";
    throw new InputError(action ?? "read the folder", [{ argument: "file", value: file, wanted }]);
  }
  return files;
}

/** What tells one state of a file from another. */
async function stampOf(file: string): Promise<string> {
  const { mtime, size } = await Deno.stat(file);
  return `${mtime?.getTime()} ${size}`;
}

function folderFault(path: string, action: string, error: unknown): unknown {
  const wanted = error instanceof Deno.errors.NotFound
    ? "must be a folder that exists"
    : error instanceof Deno.errors.NotADirectory
    ? "must be a folder, not a file"
    : error instanceof Deno.errors.PermissionDenied || error instanceof Deno.errors.NotCapable
    ? "must be open to reading (allow it with --allow-read)"
    : undefined;
  if (wanted === undefined) return error;
  return new InputError(action, [{ argument: "folder", value: path, wanted }]);
}
