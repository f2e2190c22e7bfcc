/**
 * The README's picture is the first figure of the load test notebook, as stored there. Run this
 * file to write it again: `deno run --allow-read --allow-write tests/notebook/readme_picture.ts`.
 *
 * @module
 */
const NOTEBOOK = new URL("../../notebooks/3-load-test.ipynb", import.meta.url);

/** Where the picture is kept. */
export const PICTURE: URL = new URL("../../data/sole-panels/answer.svg", import.meta.url);

/** The figure of the cell "all", as it stands in the notebook's stored outputs. */
export async function storedPicture(): Promise<string> {
  const { cells } = JSON.parse(await Deno.readTextFile(NOTEBOOK));
  const cell = cells.find(({ id }: { id: string }) => id === "all");
  const html = [cell.outputs[0].data["text/html"]].flat().join("");
  const svg = html.match(/<svg[\s\S]*<\/svg>/)?.[0];
  if (svg === undefined) throw new Error("the notebook's figure is no SVG any more");
  return `${svg}\n`;
}

if (import.meta.main) await Deno.writeTextFile(PICTURE, await storedPicture());
