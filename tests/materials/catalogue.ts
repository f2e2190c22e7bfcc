import { type Catalogue, catalogueFiles, catalogueFromFiles } from "../../lib/records/mod.ts";

const folder = new URL("../../data/materials/", import.meta.url);

/** The catalogue as a builder's notebook reads it. */
export function readCatalogue(): Catalogue {
  const files = new Map(
    catalogueFiles.map((file) => [file, Deno.readFileSync(new URL(file, folder))]),
  );
  return catalogueFromFiles({ files });
}

/** The row of a name, which must be there. */
export function named<Row>(rows: ReadonlyMap<string, Row>, name: string): Row {
  const row = rows.get(name);
  if (row === undefined) throw new Error(`the catalogue has no ${name}`);
  return row;
}
