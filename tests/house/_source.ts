import { fromFileUrl, join, relative } from "@std/path";

/** The project's folder. */
export const ROOT = fromFileUrl(new URL("../../", import.meta.url));

/** Rooms, lowest floor first: a room imports only from those before it. */
export const ROOMS = [
  "check",
  "numeric",
  "statistics",
  "materials",
  "constituents",
  "micromechanics",
  "laminate",
  "sandwich",
  "filler",
  "joints",
  "shop",
  "quantity",
  "records",
  "comparison",
  "study",
  "charts",
  "notebook",
] as const;

/** Rooms that may touch files, processes and the clock. */
export const ROOMS_WITH_DOORS: readonly string[] = ["records", "notebook"];

/** A source file: its path from the project's folder, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** Every TypeScript file below a folder of the project. */
export function sourceFiles(folder: string): readonly SourceFile[] {
  const files: SourceFile[] = [];
  const walk = (path: string): void => {
    for (const entry of Deno.readDirSync(path)) {
      const inside = join(path, entry.name);
      if (entry.isDirectory) walk(inside);
      else if (entry.name.endsWith(".ts")) {
        files.push({ path: relative(ROOT, inside), text: Deno.readTextFileSync(inside) });
      }
    }
  };
  walk(join(ROOT, folder));
  return files.toSorted((a, b) => a.path < b.path ? -1 : 1);
}

/** The text without comments, line count kept, so that a word in a comment is no offence. */
export function withoutComments(text: string): string {
  return text.replace(
    /\/\*[\s\S]*?\*\/|(?<!:)\/\/[^\n]*/g,
    (comment) => comment.replace(/[^\n]/g, " "),
  );
}
