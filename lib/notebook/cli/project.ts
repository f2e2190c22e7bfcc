import { join } from "node:path";

/** The project's folder. */
export const ROOT: string = join(import.meta.dirname!, "..", "..", "..");

/** The project's settings. */
export const CONFIG: string = join(ROOT, "deno.json");

/** The folder of the project's notebooks. */
export const NOTEBOOKS: string = join(ROOT, "notebooks");
