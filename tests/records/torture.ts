import type { DecimalSign } from "@laminate/notebooks/records";

/** Load [N], deflection [m], note. */
export type Row = readonly [number, number, (string | undefined)?];

/** An awkward file, and what must come of it. */
export interface Awkward {
  /** What is awkward about it. */
  readonly what: string;
  /** The file. */
  readonly source: string | Uint8Array;
  /** What the caller says of the file. */
  readonly options?: {
    readonly decimal?: DecimalSign;
    readonly delimiter?: string;
    readonly skipLines?: number;
    readonly encoding?: "windows-1252";
  };
  /** The rows that must be read. */
  readonly rows?: readonly Row[];
  /** What must be left out, as `line reason`. */
  readonly leftOut?: readonly string[];
  /** The faults, as `line argument: value`. */
  readonly faults?: readonly string[];
  /** Words that the message must have. */
  readonly says?: string;
}

const bytes = (...values: readonly number[]): Uint8Array => new Uint8Array(values);
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string): Uint8Array =>
  bytes(...[...text].flatMap((sign) => [sign.charCodeAt(0) & 255, sign.charCodeAt(0) >> 8]));
const joined = (...parts: readonly Uint8Array[]): Uint8Array =>
  bytes(...parts.flatMap((p) => [...p]));
const H = "load_N,deflection_mm,note\n";
const two: readonly Row[] = [[0, 0], [10, 0.0005, "a"]];

/** Delimiters and decimal signs. */
const separated: readonly Awkward[] = [
  { what: "plain", source: `${H}0,0,\n10,0.5,a\n`, rows: two },
  { what: "no line end at the end", source: `${H}0,0,\n10,0.5,a`, rows: two },
  { what: "tab", source: "load_N\tdeflection_mm\tnote\n0\t0\t\n10\t0.5\ta\n", rows: two },
  { what: "semicolon", source: "load_N;deflection_mm;note\n0;0;\n10;0.5;a\n", rows: two },
  { what: "bar", source: "load_N|deflection_mm|note\n0|0|\n10|0.5|a\n", rows: two },
  {
    what: "semicolon and decimal comma",
    source: "load_N;deflection_mm;note\n0;0,0;\n10;0,5;a\n",
    rows: two,
  },
  {
    what: "tab and decimal comma",
    source: "load_N\tdeflection_mm\n0\t0\n10,5\t0,5\n",
    rows: [[0, 0], [10.5, 0.0005]],
  },
  {
    what: "semicolon, with a comma in each note and heading",
    source: "note, text;load_N;deflection_mm\na, b;1;2\nc, d;3;4\n",
    faults: ["1 column: note, text"],
  },
  {
    what: "as many commas as semicolons in each line",
    source: "load_N;note;deflection_mm\n1;a, b, c;2\n3;d, e, f;4\n",
    rows: [[1, 0.002, "a, b, c"], [3, 0.004, "d, e, f"]],
  },
  {
    what: "semicolons in the notes of a comma file",
    source: `${H}1,2,a;b\n3,4,c;d\n5,6,e;f\n7,8,g;h\n9,10,i;j\n`,
    rows: [[1, 0.002, "a;b"], [3, 0.004, "c;d"], [5, 0.006, "e;f"], [7, 0.008, "g;h"], [
      9,
      0.01,
      "i;j",
    ]],
  },
  {
    what: "decimal comma and decimal point in one file",
    source: "load_N;deflection_mm\n10;0,5\n20;1.5\n",
    faults: ["3 deflection_mm: 1.5"],
    says: "decimal comma as the other cells",
  },
  {
    what: "a comma that could be thousands, and nothing to tell by",
    source: "load_N;deflection_mm\n1,234;5\n2,345;6\n",
    faults: ["2 load_N: 1,234", "3 load_N: 2,345"],
    says: "could mean thousands or a decimal",
  },
  {
    what: "the same, with the decimal sign told",
    source: "load_N;deflection_mm\n1,234;5\n",
    options: { decimal: "," },
    rows: [[1.234, 0.005]],
  },
  {
    what: "three decimals where another cell tells the sign",
    source: "load_N;deflection_mm\n1,234;0,25\n",
    rows: [[1.234, 0.00025]],
  },
  {
    what: "quoted decimal comma in a comma file",
    source: `${H}"10,5",1,\n`,
    faults: ["2 load_N: 10,5"],
    says: "decimal point",
  },
  {
    what: "the same, with the decimal sign told",
    source: `${H}"10,5","1,5",\n`,
    options: { decimal: "," },
    rows: [[10.5, 0.0015]],
  },
  {
    what: "unquoted decimal comma in a comma file",
    source: "load_N,deflection_mm\n10,5,0,5\n20,5,1,0\n30,5,1,5\n",
    faults: [
      "2 number of cells in the row: 4",
      "3 number of cells in the row: 4",
      "4 number of cells in the row: 4",
    ],
    says: "decimal point",
  },
  {
    what: "decimal comma that looks like an empty last cell",
    source: "load_N,deflection_mm\n1,5,\n",
    faults: ["2 number of cells in the row: 3"],
  },
  {
    what: "columns set apart by blanks",
    source: "load_N   deflection_mm\n10   0.5\n",
    faults: ["1 heading row: load_N   deflection_mm"],
    says: "must have commas between the headings",
  },
  {
    what: "a line that names the delimiter",
    source: "sep=;\r\nload_N;deflection_mm\r\n10;0,5\r\n",
    rows: [[10, 0.0005]],
  },
  {
    what: "a delimiter told by the caller",
    source: "load_N:deflection_mm\n10:0.5\n",
    options: { delimiter: ":" },
    rows: [[10, 0.0005]],
  },
];

/** Bytes, marks and line ends. */
const encoded: readonly Awkward[] = [
  {
    what: "byte order mark in bytes",
    source: joined(bytes(0xef, 0xbb, 0xbf), utf8(`${H}0,0,\n10,0.5,a\n`)),
    rows: two,
  },
  { what: "byte order mark in text", source: `\ufeff${H}0,0,\n10,0.5,a\n`, rows: two },
  { what: "CR LF", source: `${H}0,0,\n10,0.5,a\n`.replaceAll("\n", "\r\n"), rows: two },
  { what: "CR", source: `${H}0,0,\n10,0.5,a\n`.replaceAll("\n", "\r"), rows: two },
  { what: "LF, then CR LF", source: `${H}0,0,\r\n10,0.5,a\r\n`, rows: two },
  { what: "CR LF, then LF", source: `load_N,deflection_mm,note\r\n0,0,\n10,0.5,a\n`, rows: two },
  { what: "end-of-file mark of old systems", source: `${H}0,0,\n10,0.5,a\n\x1a`, rows: two },
  {
    what: "UTF-16, low byte first, with its mark",
    source: joined(bytes(0xff, 0xfe), utf16(H)),
    faults: ["1 encoding: UTF-16"],
    says: "CSV UTF-8",
  },
  {
    what: "UTF-16, high byte first, with its mark",
    source: joined(bytes(0xfe, 0xff), utf16(`\0${H}`).slice(1)),
    faults: ["1 encoding: UTF-16"],
  },
  {
    what: "UTF-16 without a mark",
    source: utf16(`${H}0,0,\n`),
    faults: ["1 encoding: UTF-16 without a mark"],
  },
  {
    what: "a degree sign in windows-1252",
    source: joined(utf8(`${H}0,0,at 20 `), bytes(0xb0), utf8("C\n")),
    faults: ["2 encoding: not UTF-8 (byte 0xb0)"],
    says: "windows-1252",
  },
  {
    what: "the same, with the encoding told",
    source: joined(utf8(`${H}0,0,at 20 `), bytes(0xb0), utf8("C\n")),
    options: { encoding: "windows-1252" },
    rows: [[0, 0, "at 20 °C"]],
  },
  {
    what: "UTF-8 that ends within a character",
    source: joined(utf8(`${H}0,0,\n1,1,`), bytes(0xc2)),
    faults: ["3 encoding: not UTF-8 (byte 0xc2)"],
  },
  {
    what: "a NUL in a number",
    source: utf8(`${H}0,0,\n1\x000,1,\n`),
    faults: ["3 encoding: text with a NUL byte"],
  },
  {
    what: "a NUL in text",
    source: `${H}0,0,\n1\x000,1,\n`,
    faults: ["3 encoding: text with a NUL"],
  },
  {
    what: "text that was decoded wrongly",
    source: `${H}0,0,20 \ufffdC\n`,
    faults: ["2 encoding: damaged text"],
  },
  {
    what: "a line separator that is no line end, in a number",
    source: `${H}1\u20280,0,\n`,
    faults: ["2 load_N: 1\u20280"],
  },
  { what: "the same in a note", source: `${H}0,0,a\u2028b\n`, rows: [[0, 0, "a\u2028b"]] },
  {
    what: "a blank that does not break, around a number",
    source: `${H}\u00a05\u00a0,0,\n`,
    rows: [[5, 0]],
  },
];

/** Headings, units and what is no table. */
const headed: readonly Awkward[] = [
  { what: "nothing", source: "", faults: ["1 the table: "], says: "a row of headings" },
  { what: "a byte order mark and nothing else", source: "\ufeff", faults: ["1 the table: "] },
  { what: "blank lines", source: "\n\n  \n", faults: ["1 the table: "] },
  { what: "headings only", source: H, faults: ["1 number of data rows: 0"] },
  {
    what: "headings and blank rows",
    source: `${H},,\n\n`,
    faults: ["1 number of data rows: 0"],
  },
  { what: "no headings", source: "0,0,\n10,0.5,a\n", faults: ["1 heading row: 0"] },
  {
    what: "no headings, decimal commas",
    source: "0;0,5\n10;0,7\n",
    faults: ["1 heading row: 0"],
    says: "must hold headings, not figures",
  },
  {
    what: "a web page",
    source: "<!DOCTYPE html>\n<html><body>\n</body></html>\n",
    faults: ["1 heading row: <!DOCTYPE html>"],
  },
  {
    what: "JSON",
    source: '{"load_N": [1, 2],\n "deflection_mm": [3, 4]}\n',
    faults: ['1 heading row: {"load_N": [1, 2],'],
  },
  {
    what: "lines above the headings",
    source: `Test of 3 May\n\n${H}0,0,\n10,0.5,a\n`,
    faults: ["1 heading row: Test of 3 May"],
    says: "take lines above the headings out",
  },
  {
    what: "the same, to be skipped",
    source: `Test of 3 May\n\n${H}0,0,\n10,0.5,a\n`,
    options: { skipLines: 2 },
    rows: two,
    leftOut: ["1 skipped line", "2 skipped line"],
  },
  {
    what: "a column twice",
    source: "load_N,load_N,deflection_mm\n1,2,3\n",
    faults: ["1 heading: load_N"],
    says: "must stand once",
  },
  {
    what: "a column in two units",
    source: "load_N,load_kN,deflection_mm\n1,2,3\n",
    faults: ["1 heading: load_kN"],
  },
  {
    what: "a column that is missing",
    source: "load_N,note\n1,a\n",
    faults: ["1 column deflection: undefined"],
    says: "the file has: load_N, note",
  },
  {
    what: "a heading in capitals",
    source: "LOAD_N,deflection_mm\n1,2\n",
    faults: ["1 column load: undefined"],
    says: "did you mean load_N where it says LOAD_N?",
  },
  {
    what: "blanks and brackets in the headings",
    source: " load [N] , deflection (mm) ,note\n10, 0.5 ,a\n",
    rows: [[10, 0.0005, "a"]],
  },
  {
    what: "a row of units",
    source: "load,deflection,note\nN,mm,\n10,0.5,a\n",
    rows: [[10, 0.0005, "a"]],
  },
  {
    what: "a row of units beside units in the headings",
    source: "load_N,deflection,note\nN,mm,-\n10,0.5,a\n",
    rows: [[10, 0.0005, "a"]],
  },
  {
    what: "a row of units against the headings",
    source: "load_N,deflection_mm\nkN,mm\n10,0.5\n",
    faults: ["2 unit of load_N: kN"],
  },
  {
    what: "no unit",
    source: "load,deflection_mm\n10,0.5\n",
    faults: ["1 heading: load"],
    says: "must end with its unit",
  },
  {
    what: "an unknown unit",
    source: "load_stone,deflection_mm\n10,0.5\n",
    faults: ["1 unit in the heading: load_stone"],
  },
  {
    what: "a unit of another kind",
    source: "load_mm,deflection_mm\n10,0.5\n",
    faults: ["1 unit in the heading: load_mm"],
    says: "must be a unit of force",
  },
  { what: "other units", source: "load_kN,deflection_in\n0.01,1\n", rows: [[10, 0.0254]] },
  {
    what: "a column that is not known",
    source: "load_N,deflection_mm,temperature\n1,2,\n3,4,21\n",
    faults: ["1 column: temperature"],
    says: "begin with x_",
  },
  {
    what: "a column that is not known, and empty",
    source: "load_N,deflection_mm,temperature\n1,2,\n3,4,\n",
    rows: [[1, 0.002], [3, 0.004]],
    leftOut: ["1 empty column"],
  },
  {
    what: "a column of one's own",
    source: "load_N,deflection_mm,x_who\n1,2,me\n",
    rows: [[1, 0.002]],
    leftOut: ["1 column marked x_"],
  },
  {
    what: "empty columns at the end",
    source: `load_N,deflection_mm,note,,\n10,0.5,a,,\n`,
    rows: [[10, 0.0005, "a"]],
  },
  {
    what: "a cell under an empty heading",
    source: `load_N,deflection_mm,\n10,0.5,\n11,0.6,x\n`,
    faults: ["3 cell under an empty heading: x"],
  },
  {
    what: "headings that a program may stumble on",
    source: "load_N,deflection_mm,__proto__,constructor\n1,2,3,4\n",
    faults: ["1 column: __proto__", "1 column: constructor"],
  },
];

/** Rows: short, long, blank, quoted, commented. */
const rowed: readonly Awkward[] = [
  { what: "a short row", source: `${H}0,0,\n10\n`, faults: ["3 number of cells in the row: 1"] },
  {
    what: "a long row",
    source: `${H}0,0,\n10,1,a,b\n`,
    faults: ["3 number of cells in the row: 4"],
  },
  {
    what: "blank rows of all kinds",
    source: `${H}0,0,\n\n,,\n , ,\n10,0.5,a\n\n\n`,
    rows: two,
    leftOut: ["3 blank row", "7 blank row"],
  },
  {
    what: "comments",
    source: `# made at the club\n${H}0,0,\n# 12" board, "slipped\n10,0.5,a\n#end`,
    rows: two,
    leftOut: ["1 comment", "4 comment", "6 comment"],
  },
  {
    what: "a quoted cell that begins with #",
    source: 'note,load_N,deflection_mm\n"#3",1,2\n',
    rows: [[1, 0.002, "#3"]],
  },
  {
    what: "a name that begins with #",
    source: "note,load_N,deflection_mm\n#3,1,2\n# 4,5,6\n7,8,9\n",
    faults: ["2 first cell: #3"],
    says: "put the cell in quotes",
  },
  { what: "a footer", source: `${H}0,0,\nMax,0.5,\n`, faults: ["3 load_N: Max"] },
  {
    what: "a quote that does not close",
    source: `${H}0,0,\n1,1,"open\n2,2,\n3,3,\n`,
    faults: ['3 quoted cell: "open'],
    says: "must be closed",
  },
  {
    what: "text behind a closing quote",
    source: `${H}0,0,\n1,1,"a"x\n`,
    faults: ['3 quoted cell: "a"x'],
  },
  {
    what: "a quoted line end, and the right line behind it",
    source: `${H}0,0,"one\r\ntwo\n\nthree"\nx,0,\n`,
    faults: ["6 load_N: x"],
  },
  { what: "a quoted line end", source: `${H}0,0,"one\r\ntwo"\n`, rows: [[0, 0, "one\ntwo"]] },
  { what: "a doubled quote", source: `${H}0,0,"12"" board"\n`, rows: [[0, 0, '12" board']] },
  { what: "an inch sign", source: `${H}0,0,12" board\n`, rows: [[0, 0, '12" board']] },
  {
    what: "everything quoted",
    source: `"load_N","deflection_mm","note"\n"0","0",""\n"10","0.5","a"\n`,
    rows: two,
  },
  {
    what: "a blank before a quote",
    source: `${H}0,0, "a, b"\n`,
    faults: ["2 number of cells in the row: 4"],
  },
  {
    what: "single quotes",
    source: `${H}0,0,'a, b'\n`,
    faults: ["2 number of cells in the row: 4"],
  },
  { what: "curly quotes", source: `${H}0,0,“a, b”\n`, faults: ["2 number of cells in the row: 4"] },
  {
    what: "markup in a note stays text",
    source: `${H}0,0,<script>alert(1)</script>\n`,
    rows: [[0, 0, "<script>alert(1)</script>"]],
  },
  {
    what: "a spreadsheet's error in the first cell",
    source: `${H}#DIV/0!,0,\n#N/A,0,\n1,1,\n`,
    faults: ["2 first cell: #DIV/0!", "3 first cell: #N/A"],
    says: "not a spreadsheet's error",
  },
  { what: "a formula in a note stays text", source: `${H}0,0,=1+2\n`, rows: [[0, 0, "=1+2"]] },
];

/** Cells that are no number, each as the load of the second line. */
const numbers: readonly (readonly [cell: string, says: string])[] = [
  ["=1+2", "not a formula"],
  ["@SUM(A1)", "must be a number"],
  ["", "the cell is empty"],
  ["NaN", "finite"],
  ["Infinity", "finite"],
  ["-inf", "finite"],
  ["1e400", "below 1.8e308"],
  ["1e-400", "above 1e-308"],
  ["0x10", "must be a number"],
  ['"#DIV/0!"', "not a spreadsheet's error"],
  [" #N/A", "not a spreadsheet's error"],
  ["5 N", "the unit stands in the heading"],
  ["50 %", "without %"],
  ["1'000", "without thousands separators"],
  ["1 000", "without thousands separators"],
  ['"1,234.5"', "without thousands separators"],
  ['"1.234,56"', "without thousands separators"],
  ["1.234.567", "without thousands separators"],
  ["−3", "minus sign of the keyboard"],
  ["1-2", "must be a number"],
  ["--1", "must be a number"],
  ["1.2.3", "must be a number"],
  ["12/05/2026", "must be a number"],
  ["ten", "must be a number"],
  ["TRUE", "must be a number"],
  ["٣", "must be a number"],
  ["e5", "must be a number"],
  [".", "must be a number"],
];

/** Cells that are a number. */
const figures: readonly (readonly [cell: string, value: number])[] = [
  ["+3", 3],
  ["-3", -3],
  ["007", 7],
  [".5", 0.5],
  ["5.", 5],
  ["1e3", 1000],
  ["1E+05", 100000],
  ["-0", 0],
  [" 12 ", 12],
  ["0.1", 0.1],
  ["123456789012345678", 123456789012345680],
  ["0.1234567890123456789", 0.12345678901234568],
];

/** Notes, and the text that each stands for. */
const texts: readonly (readonly [cell: string, text: string | undefined])[] = [
  ["'=1+2", "=1+2"],
  ["''=1+2", "'=1+2"],
  ["'tis", "'tis"],
  ["=1+2", "=1+2"],
  ["@SUM(A1)", "@SUM(A1)"],
  [" a ", "a"],
  ["007", "007"],
  ["TRUE", "TRUE"],
  ["2026-05-03", "2026-05-03"],
  ["<b>a</b>", "<b>a</b>"],
  ['"a, b"', "a, b"],
  ["20 °C", "20 °C"],
  ["°", "°"],
  ["\u00a0", undefined],
  ['""', undefined],
];

/** Awkward files, and what must come of each. */
export const awkward: readonly Awkward[] = [
  ...separated,
  ...encoded,
  ...headed,
  ...rowed,
  // Each stands first, and behind a plain row: rows behind the first are read by another way.
  ...numbers.flatMap(([cell, says]): readonly Awkward[] => {
    const shown = cell.replaceAll('"', "").trim();
    const what = `a load of ${cell}`;
    return [
      { what, source: `${H}${cell},0,\n`, faults: [`2 load_N: ${shown}`], says },
      {
        what: `${what}, later`,
        source: `${H}0,0,\n${cell},0,\n`,
        faults: [`3 load_N: ${shown}`],
        says,
      },
    ];
  }),
  ...figures.map(([cell, value]): Awkward => ({
    what: `a load of ${cell} is a number`,
    source: `${H}${cell},0,\n${cell},0,\n`,
    rows: [[value, 0], [value, 0]],
  })),
  ...texts.map(([cell, text]): Awkward => ({
    what: `a note of ${cell}`,
    source: `${H}0,0,${cell}\n0,0,${cell}\n1,0,${cell}\n`,
    rows: [[0, 0, text], [0, 0, text], [1, 0, text]],
  })),
];
