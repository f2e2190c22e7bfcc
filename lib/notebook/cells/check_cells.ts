import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Notebook } from "../runner/notebook_file.ts";
import { deno } from "./deno_command.ts";
import { extractCode, type ExtractedCode } from "./extract.ts";

/** A notebook by its name. */
export interface NamedNotebook {
  /** Name of the file without its ending. */
  readonly name: string;
  /** What it holds. */
  readonly notebook: Notebook;
}

/** Something that the type checker or the linter found. */
export interface Finding {
  /** Where: `name, code cell 3, line 2`; the name alone if it stands in no cell. */
  readonly place: string;
  /** Number of the code cell; 0 if it stands in none. */
  readonly cell: number;
  /** What was found. */
  readonly message: string;
}

/**
 * Type-checks and lints the code of notebooks, which Deno's own tools do not read.
 *
 * @param notebooks What to check.
 * @param options The project's deno.json, whose imports and rules count; `lint` to lint as well.
 * @returns What was found; empty if nothing.
 */
export async function checkCells(
  notebooks: readonly NamedNotebook[],
  { config, lint = true }: { readonly config: string; readonly lint?: boolean },
): Promise<Finding[]> {
  if (notebooks.length === 0) return [];
  // Outside the project, so that a stopped run leaves nothing in it.
  const folder = await Deno.makeTempDir({ prefix: "laminate-cells-" });
  try {
    const extracted = new Map<string, Extracted>();
    for (const { name, notebook } of notebooks) {
      const code = extractCode(notebook);
      const file = join(folder, `${name}.ts`);
      await Deno.writeTextFile(file, code.text);
      extracted.set(`${name}.ts`, { name, file, code });
    }
    const files = [...extracted.values()].map(({ file }) => file);
    const checked = await deno(["check", "--quiet", "--config", config, ...files]);
    const report = checked.text.replaceAll(pathToFileURL(folder).href + "/", "");
    const typeFaults = checked.code === 0 ? [] : readCheck(report, extracted);
    // What does not parse is reported once.
    if (!lint || typeFaults.some(({ message }) => message.includes("SyntaxError"))) {
      return typeFaults;
    }
    const linted = await deno(["lint", "--quiet", "--json", "--config", config, ...files]);
    return [...typeFaults, ...readLint(linted.out, extracted)];
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

interface Extracted {
  readonly name: string;
  readonly file: string;
  readonly code: ExtractedCode;
}

/** The checker's report: paragraphs that end in "at file:…:line:column". */
function readCheck(text: string, extracted: ReadonlyMap<string, Extracted>): Finding[] {
  const findings: Finding[] = [];
  let paragraph: string[] = [];
  for (const line of text.split("\n")) {
    const [, file, row] = line.match(/^\s*at (\S+\.ts):(\d+):\d+$/) ?? [];
    const from = file === undefined ? undefined : extracted.get(file);
    if (from !== undefined) {
      findings.push(finding(from, Number(row), paragraph.join("\n").trim()));
      paragraph = [];
    } else paragraph.push(line);
  }
  // A report that we cannot read is still a report.
  return findings.length > 0 ? findings : [{ place: "the cells", cell: 0, message: text.trim() }];
}

interface LintReport {
  readonly diagnostics: readonly {
    readonly filename: string;
    readonly range: { readonly start: { readonly line: number } };
    readonly message: string;
    readonly code: string;
  }[];
  readonly errors: readonly { readonly file_path?: string; readonly message: string }[];
}

function readLint(text: string, extracted: ReadonlyMap<string, Extracted>): Finding[] {
  const report: LintReport = JSON.parse(text);
  const findings = report.diagnostics.flatMap(({ filename, range, message, code }) => {
    const from = extracted.get(basename(filename));
    const line = range.start.line;
    // The runner assigns to what a parameters cell declares, so "let" is meant; and a cell has no
    // public face, whose types would have to be written out.
    const meant = code.startsWith("explicit-") ||
      code === "prefer-const" && from?.code.placeOf(line)?.tags.includes("parameters") === true;
    return from === undefined || meant ? [] : [finding(from, line, `${code}: ${message}`)];
  });
  const broken = report.errors.map(({ message }) => ({ place: "the cells", cell: 0, message }));
  return [...findings, ...broken];
}

function finding({ name, code }: Extracted, line: number, message: string): Finding {
  const place = code.placeOf(line);
  return place === undefined
    ? { place: name, cell: 0, message }
    : { place: `${name}, code cell ${place.cell}, line ${place.line}`, cell: place.cell, message };
}
