/**
 * 10⁶ readings of load tests: read, checked and fitted, beside what papaparse needs to parse them.
 * To be reached: less than 1.5 times papaparse with `step` alone.
 */
import {
  choiceColumn,
  noteColumn,
  numberColumn,
  readColumns,
  textColumn,
} from "@laminate/notebooks/records";
import Papa from "papaparse";

const SPECIMENS = 2000;
const READINGS = 500;

/** A table of 30 MB, invented: a slope per specimen, some notes, some of them quoted. */
function readings(): Uint8Array {
  // A congruential generator (Numerical Recipes' constants), so that each run has the same table.
  let state = 20261125;
  const random = (): number => (state = (1664525 * state + 1013904223) % 2 ** 32) / 2 ** 32;
  const notes = ["", "", "", "", "", "", "", "ok", "ok", '"slip, re-seated"'];
  const lines = ["specimen,span_mm,load_N,deflection_mm,note"];
  for (let specimen = 0; specimen < SPECIMENS; specimen++) {
    const slope = 80 + 320 * random();
    const span = [150, 200, 250.5, 300][Math.floor(4 * random())]!;
    const name = `S${String(specimen).padStart(4, "0")}`;
    for (let reading = 0; reading < READINGS; reading++) {
      const deflection = 0.05 + 6 * random();
      const load = slope * deflection + random() + 3;
      const note = notes[Math.floor(10 * random())]!;
      lines.push(
        `${name},${span.toFixed(1)},${load.toFixed(3)},${deflection.toFixed(4)},${note}`,
      );
    }
  }
  return new TextEncoder().encode(`${lines.join("\n")}\n`);
}

const table = readings();
const group = "10⁶ rows of CSV";
const few = { group, n: 5, warmup: 2 } as const;

const columns = {
  specimen: textColumn(),
  span: numberColumn("length", { above: 0 }),
  load: numberColumn("force"),
  deflection: numberColumn("length"),
  note: noteColumn(),
};

/** Sums of which the slope of one specimen is made. */
interface Sums {
  n: number;
  x: number;
  y: number;
  xx: number;
  xy: number;
}

const noSums = (): Sums => ({ n: 0, x: 0, y: 0, xx: 0, xy: 0 });

function add(sums: Sums, x: number, y: number): void {
  sums.n++;
  sums.x += x;
  sums.y += y;
  sums.xx += x * x;
  sums.xy += x * y;
}

const slope = ({ n, x, y, xx, xy }: Sums): number => (n * xy - x * y) / (n * xx - x * x);

Deno.bench({
  name: "papaparse step, parsing alone",
  ...few,
  baseline: true,
  fn(): void {
    let rows = 0;
    Papa.parse(new TextDecoder().decode(table), {
      delimiter: ",",
      newline: "\n",
      step: () => void rows++,
    });
    if (rows < SPECIMENS * READINGS) throw new Error(`${rows} rows`);
  },
});

Deno.bench({
  name: "papaparse step, Number and fit, unchecked",
  ...few,
  fn(): void {
    const fits = new Map<string, Sums>();
    Papa.parse(new TextDecoder().decode(table), {
      delimiter: ",",
      newline: "\n",
      step({ data }: { data: readonly string[] }): void {
        let sums = fits.get(data[0]!);
        if (sums === undefined) fits.set(data[0]!, sums = noSums());
        add(sums, Number(data[3]), Number(data[2]));
      },
    });
    if ([...fits.values()].map(slope).length < SPECIMENS) throw new Error("specimens are missing");
  },
});

Deno.bench({
  name: "readColumns: read, checked, in SI, and fit",
  ...few,
  fn(): void {
    const { columns: cells, count } = readColumns(table, { columns });
    const { specimen, load, deflection } = cells;
    const fits = new Map<string, Sums>();
    let sums = noSums();
    for (let i = 0; i < count; i++) {
      if (i === 0 || specimen[i] !== specimen[i - 1]) {
        sums = fits.get(specimen[i]!) ?? noSums();
        fits.set(specimen[i]!, sums);
      }
      add(sums, deflection[i]!, load[i]!);
    }
    if ([...fits.values()].map(slope).length !== SPECIMENS) {
      throw new Error("specimens are missing");
    }
  },
});

/** The demonstration's kind of table, small: what a crew waits for. */
const small = `test,specimen,layup,loading,span_mm,load_N,deflection_mm,branch,note\n${
  "T1,S1,sole,three-point,400,12.5,0.25,loading,\n".repeat(200)
}`;
const smallColumns = {
  test: textColumn(),
  specimen: textColumn(),
  layup: textColumn(),
  loading: choiceColumn("three-point", "quarter-point"),
  span: numberColumn("length", { above: 0 }),
  load: numberColumn("force"),
  deflection: numberColumn("length"),
  branch: choiceColumn("loading", "unloading"),
  note: noteColumn(),
};

Deno.bench({
  name: "papaparse with headings, 200 rows, unchecked",
  group: "200 rows of CSV",
  baseline: true,
  fn: () => void Papa.parse(small, { header: true, skipEmptyLines: "greedy" }),
});

Deno.bench({
  name: "readColumns, 200 rows",
  group: "200 rows of CSV",
  fn: () => void readColumns(small, { columns: smallColumns }),
});
