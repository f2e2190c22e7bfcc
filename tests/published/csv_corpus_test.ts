/**
 * The open corpus csv-spectrum 2.0.0 (npm, BSD-2-Clause): CSV files and what any reader should
 * make of them. Two of its answers differ from ours, as the tests below say.
 */
import { InputError } from "@laminate/notebooks/check";
import { noteColumn, readTable } from "@laminate/notebooks/records";
import { assertEquals, assertThrows } from "@std/assert";
import csvSpectrum from "csv-spectrum";

interface Item {
  readonly name: string;
  readonly csv: Uint8Array;
  readonly json: Uint8Array;
}

type Answer = readonly Readonly<Record<string, string>>[];

const corpus = await new Promise<readonly Item[]>((resolve, reject) => {
  csvSpectrum((error: unknown, items: readonly Item[]) => error ? reject(error) : resolve(items));
});

const read = ({ csv, json }: Item): { readonly rows: Answer; readonly answer: Answer } => {
  const answer = JSON.parse(new TextDecoder().decode(json)) as Answer;
  const headings = Object.keys(answer[0]!);
  const columns = Object.fromEntries(headings.map((name) => [name, noteColumn()]));
  const { rows } = readTable(new Uint8Array(csv), { columns });
  // Where the corpus has an empty text we have no value.
  const texts = rows.map((row) =>
    Object.fromEntries(headings.map((name) => [name, row[name] ?? ""]))
  );
  return { rows: texts, answer };
};

/** Text cells are read without blanks around them, and with one kind of line end. */
const plain = (answer: Answer): Answer =>
  answer.map((row) =>
    Object.fromEntries(
      Object.entries(row).map(([name, cell]) => [name, cell.replaceAll("\r\n", "\n").trim()]),
    )
  );

Deno.test("csv-spectrum: the corpus has the 12 files that are told apart here", () => {
  assertEquals(corpus.length, 12);
});

for (const item of corpus.filter(({ name }) => name !== "location_coordinates")) {
  Deno.test(`csv-spectrum: ${item.name}`, () => {
    const { rows, answer } = read(item);
    // Of the 11 files only this one has CR LF within a cell.
    if (item.name !== "newlines_crlf") assertEquals(plain(answer), answer);
    assertEquals(rows, plain(answer));
  });
}

Deno.test("csv-spectrum: location_coordinates holds signs that were damaged, and is refused", () => {
  const item = corpus.find(({ name }) => name === "location_coordinates")!;
  const columns = { Cities: noteColumn() };
  const error = assertThrows(
    () => readTable(new Uint8Array(item.csv), { columns }),
    InputError,
    "damaged text",
  );
  assertEquals(error.faults.map(({ line }) => line), [2]);
});
