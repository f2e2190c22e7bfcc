import { isAbsolute, relative, resolve } from "node:path";
import { InputError } from "../../check/mod.ts";
import { partFiles, readPart } from "../../records/mod.ts";
import { ROOT } from "./project.ts";

/** Files of spreadsheet programs, which no notebook reads. */
const SHEET = /\.(?:xlsx|xlsm|xls|ods|numbers)$/i;

/** A part folder as notebooks write it: from their own folder, or whole if it lies elsewhere. */
export function pathForNotebooks(whole: string, notebooks: string): string {
  const path = isInProject(whole) ? relative(notebooks, whole) : whole;
  return Deno.build.os === "windows" ? path.replaceAll("\\", "/") : path;
}

/** Whether a folder lies inside the project. */
export function isInProject(folder: string): boolean {
  const inside = relative(ROOT, resolve(folder));
  return !inside.startsWith("..") && !isAbsolute(inside);
}

/** Why the tables of a part cannot be read, all faults in one text; undefined if they can. */
export async function partFaultOf(folder: string): Promise<string | undefined> {
  try {
    await readPart(folder);
    return undefined;
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    const sheets = await unsavedSheets(folder);
    return [error.message, ...sheets.map(sheetSentence)].join("\n");
  }
}

/** Spreadsheets of a part folder that stand where a table in CSV is looked for. */
export async function unsavedSheets(folder: string): Promise<readonly string[]> {
  const names: string[] = [];
  for await (const { name } of Deno.readDir(folder)) names.push(name);
  return names.sort().filter((name) => {
    const table = tableOf(name);
    return SHEET.test(name) && partFiles.includes(table) && !names.includes(table);
  });
}

function tableOf(sheet: string): string {
  return sheet.replace(SHEET, ".csv");
}

/** What to do with a spreadsheet that is not read. */
export function sheetSentence(sheet: string): string {
  return `found ${sheet}, which is not read: save it as CSV, ${tableOf(sheet)}`;
}

/** Says behind a reason such as `putty.csv is missing` that there is a spreadsheet of that name. */
export async function sheetFor(reason: string, folder: string | undefined): Promise<string> {
  if (folder === undefined) return "";
  const sheets = await unsavedSheets(folder);
  return sheets.filter((sheet) => reason.includes(tableOf(sheet)))
    .map((sheet) => `; ${sheetSentence(sheet)}`).join("");
}
