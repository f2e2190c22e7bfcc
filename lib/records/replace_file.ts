import { basename, dirname, join } from "@std/path";
import { InputError } from "../check/mod.ts";

/**
 * Writes a file whole or not at all: the content goes into a file beside it, which then takes its
 * name. Whoever reads meanwhile sees the old content or the new; where the disk is full or the
 * program is stopped, the old content stays.
 *
 * Range: needs permission to read and write the folder of the file
 *
 * @param path The file.
 * @param content Its new content.
 * @returns Nothing, once the file has its new content.
 * @throws {InputError} If the folder is not there, or may not be written to.
 *
 * @example
 * ```ts
 * import { InputError } from "@laminate/notebooks/check";
 * import { replaceFile } from "@laminate/notebooks/records";
 * import { assert } from "@std/assert";
 *
 * const error = await replaceFile("no such folder/note.txt", "text").catch((reason) => reason);
 * assert(error instanceof InputError && error.message.includes("must be in a folder"));
 * ```
 */
export async function replaceFile(path: string, content: string | Uint8Array): Promise<void> {
  if (typeof path !== "string" || path.trim() === "") {
    throw new InputError("write the file", [
      { argument: "path", value: path, wanted: "must be a path" },
    ]);
  }
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  // A name of its own, so that two runs at once do not write into one file.
  const beside = join(dirname(path), `.${basename(path)}.${crypto.randomUUID()}.tmp`);
  try {
    const file = await Deno.open(beside, { write: true, createNew: true });
    try {
      for (let done = 0; done < bytes.length;) done += await file.write(bytes.subarray(done));
      await file.syncData();
    } finally {
      file.close();
    }
    await Deno.rename(beside, path);
  } catch (error) {
    await Deno.remove(beside).catch(() => {});
    throw writeFault(path, error);
  }
}

function writeFault(path: string, error: unknown): unknown {
  const { NotFound, NotADirectory, PermissionDenied, NotCapable, IsADirectory } = Deno.errors;
  const wanted = error instanceof NotFound || error instanceof NotADirectory
    ? "must be in a folder that exists"
    : error instanceof PermissionDenied || error instanceof NotCapable
    ? "must be in a folder that may be written to (allow it with --allow-write)"
    : error instanceof IsADirectory
    ? "must be a file, not a folder"
    : undefined;
  if (wanted !== undefined) {
    return new InputError("write the file", [{ argument: "path", value: path, wanted }]);
  }
  const reason = error instanceof Error ? error.message : String(error);
  return new Error(`Cannot write ${path}: ${reason}; what was there before is unchanged`, {
    cause: error,
  });
}
