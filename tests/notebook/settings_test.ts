import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { InputError } from "@laminate/notebooks/check";
import { readSettings } from "@laminate/notebooks/records";
import { NOTEBOOKS } from "../../lib/notebook/cli/project.ts";
import {
  settableIn,
  settingsTable,
  type SetValues,
  setValues,
} from "../../lib/notebook/cli/settings.ts";
import { notebookNames } from "../../lib/notebook/runner/files.ts";
import { notebookOf, withFolder, writeNotebooks } from "./_fixtures.ts";

const PARAMETERS = "parameters";

const FIRST = notebookOf(
  [
    'let part = "a";\nlet units: "metric" | "US" = "metric";\nlet heel = "60 mm";\n' +
    'let save = false;\nlet count = 2;\nlet share = 0.5;\nlet chosen = "";\n' +
    'let prices = { ply: 16 };\nlet night = { at: ["0 h", "4 h"], warm: ["18 °C"] };\n' +
    'let aside = ["panel 6"];\nlet links = [{ name: "wire" }];',
    PARAMETERS,
  ],
);
const SECOND = notebookOf([
  'let part = "a";\nlet units: "metric" | "US" = "metric";\nlet heel = "900 N";',
  PARAMETERS,
]);

/** What a settings.csv sets in two notebooks and a lesson. */
async function setBy(csv: string): Promise<ReadonlyMap<string, SetValues>> {
  let found: ReadonlyMap<string, SetValues> = new Map();
  await withFolder(async (folder) => {
    await writeNotebooks(folder, {
      first: FIRST,
      second: SECOND,
      lesson: notebookOf("# Lesson", "1;"),
    });
    const settable = await settableIn(folder, ["first", "second", "lesson"]);
    found = setValues({ rows: readSettings(csv), settable });
  });
  return found;
}

async function faultsOf(csv: string): Promise<readonly string[]> {
  try {
    await setBy(csv);
    return [];
  } catch (error) {
    assert(error instanceof InputError, String(error));
    return error.faults.map(({ file, line, argument, value, wanted }) =>
      `${file} ${line} ${argument} ${JSON.stringify(value)}: ${wanted}`
    );
  }
}

const HEAD = "notebook,name,value\n";

Deno.test("settings: each kind of value, also as people write it; a notebook's own row counts first", async () => {
  const set = await setBy(
    `${HEAD}first,heel,2 1/2 in\n,units,US\nfirst,units,metric\nfirst,save,TRUE\nfirst,count,3\n` +
      'first,share,"0,25"\nfirst,chosen,sole\nfirst,prices.ply,20\n' +
      "first.ipynb,night.at,0 h; 12 h ;20 h\nfirst,night.warm,64 °F;59 °F\nfirst,aside,\n",
  );
  assertEquals([...set.get("first")!.values], [
    ["units", "metric"],
    ["heel", "2 1/2 in"],
    ["save", true],
    ["count", 3],
    ["share", 0.25],
    ["chosen", "sole"],
    ["prices.ply", 20],
    ["night.at", ["0 h", "12 h", "20 h"]],
    ["night.warm", ["64 °F", "59 °F"]],
    ["aside", []],
    // What of it is the builder's own: a notebook may say of the rest that it is assumed.
    ["given", [
      ...["heel", "save", "count", "share", "chosen", "prices.ply", "night.at", "night.warm"],
      "aside",
    ]],
  ]);
  // What is as usual is not said.
  assertEquals(
    set.get("first")!.said,
    "Settings from settings.csv: heel = 2 1/2 in, save = true, count = 3, share = 0.25, " +
      "chosen = sole, prices.ply = 20, night.at = 0 h; 12 h; 20 h, night.warm = 64 °F; 59 °F, " +
      "aside = ",
  );
  assertEquals<unknown>(set.get("second"), {
    values: new Map<string, unknown>([["units", "US"], ["given", ["units"]]]),
    said: "Settings from settings.csv: units = US",
  });
  assertEquals(set.get("lesson"), { values: new Map(), said: "" });
});

Deno.test("settings: semicolons, decimal commas, a byte order mark and CRLF, as a spreadsheet saves", async () => {
  const set = await setBy(
    '\ufeffnotebook;name;value\r\nfirst;share;0,25\r\nfirst;night.at;"0 h;4 h"\r\n' +
      "first;heel;62,5 mm\r\n;;\r\n",
  );
  assertEquals([...set.get("first")!.values], [
    ["share", 0.25],
    ["night.at", ["0 h", "4 h"]],
    ["heel", "62,5 mm"],
    ["given", ["heel", "share"]],
  ]);
});

Deno.test("settings: what cannot be meant is named by line and column, with what would do", async () => {
  const names = "units, heel, save, count, share, chosen, prices.ply, night.at, night.warm, " +
    "aside, links";
  const cases: readonly (readonly [string, string])[] = [
    ["third,heel,1 in", 'notebook "third": must be one of: first, second, lesson'],
    ["first,hel,1 in", `name "hel": must be one that first has: ${names}`],
    ["first,toString,1", `name "toString": must be one that first has: ${names}`],
    [
      ",__proto__,1",
      'name "__proto__": must be a name in the first cell of a notebook: ' +
      "--settings writes them all",
    ],
    ["lesson,units,US", 'name "units": must be left out: nothing can be set in lesson'],
    ["first,part,b", 'name "part": must be left out: it is named by --part'],
    ["first,heel,60", 'value of heel "60": must be a length such as 60 mm'],
    ["first,heel,60 N", 'value of heel "60 N": must be a length such as 60 mm'],
    ["first,heel,", 'value of heel "": must be a length such as 60 mm'],
    // A heel is a length in one notebook and a force in the other.
    [
      ",heel,60 mm",
      'value of heel "60 mm": must be a force such as 900 N in second; ' +
      "name the notebook that is meant",
    ],
    ["first,save,maybe", 'value of save "maybe": must be true or false'],
    ["first,save,constructor", 'value of save "constructor": must be true or false'],
    ["first,count,two", 'value of count "two": must be a plain number such as 2'],
    ["first,count,NaN", 'value of count "NaN": must be a plain number such as 2'],
    ["first,count,1e999", 'value of count "1e999": must be a plain number such as 2'],
    ["first,units,us", 'value of units "us": must be one of: metric, US'],
    [
      "first,night.at,0 h;x",
      'value of night.at "0 h;x": must be a time such as 0 h, ' +
      "with ; between, as in 0 h; 4 h",
    ],
    ["first,night.at,", 'value of night.at "": must be a list with ; between, such as 0 h; 4 h'],
    ["first,night,1", `name "night": must be one that first has: ${names}`],
    [
      "first,links,1",
      'value of links "1": must be left out: this list can be changed in the ' +
      "notebook itself only",
    ],
  ];
  for (const [row, said] of cases) {
    assertEquals(await faultsOf(HEAD + row + "\n"), [`settings.csv 2 ${said}`]);
  }
  assertEquals(await faultsOf(`${HEAD}first,count,3\nfirst,count,4\n`), [
    'settings.csv 3 name "count": must be set once for a notebook: line 2 sets it too',
  ]);
  assertEquals((await faultsOf(`${HEAD}a,b,c\nfirst,count,x\n`)).length, 2, "all at once");
  const [formula] = await faultsOf(`${HEAD}first,chosen,=A1\n`);
  assert(formula!.includes("must be the text itself, not a formula"), formula);
});

Deno.test("the table of all that may be set is itself a settings.csv that changes nothing", async () => {
  const settable = await settableIn(NOTEBOOKS, await notebookNames(NOTEBOOKS));
  const text = settingsTable(settable);
  assert(text.startsWith("\ufeffnotebook,name,value\n,units,metric\n"), text.slice(0, 80));
  const rows = readSettings(text);
  assert(rows.length > 150, `${rows.length}`);
  for (const { said } of setValues({ rows, settable }).values()) assertEquals(said, "");
  // Every notebook that reads a part lets its units be set.
  for (const [name, settings] of settable) {
    const text = await Deno.readTextFile(join(NOTEBOOKS, `${name}.ipynb`));
    const reads = text.includes("let part = ");
    assertEquals(settings.some((setting) => setting.name === "units"), reads, name);
  }
});
