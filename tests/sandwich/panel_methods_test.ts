import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  allEdges,
  type EdgeSupport,
  levyPanel,
  navierPanel,
  type Panel,
  type PanelLoad,
  type PanelPoint,
  ritzPanel,
  solvePanel,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";
import { sandwich } from "./_panels.ts";

const panel = (edges: Panel["edges"], ...loads: readonly PanelLoad[]): Panel => ({
  length: 0.6,
  width: 0.4,
  stiffness: sandwich,
  edges,
  loads,
});
const uniform: PanelLoad = { kind: "uniform", pressure: 1e4 };
const head: PanelLoad = { kind: "linear", along: "y", atStart: 2e3, atEnd: 9e3 };
const ramp: PanelLoad = { kind: "linear", along: "x", atStart: 0, atEnd: 9e3 };
const heel: PanelLoad = {
  kind: "patch",
  force: 800,
  x: 0.2,
  y: 0.15,
  lengthX: 0.08,
  lengthY: 0.06,
};
const rail: PanelLoad = { kind: "line", along: "x", force: 500, at: 0.13, from: 0.1, to: 0.5 };
const batten: PanelLoad = { kind: "line", along: "y", force: 500, at: 0.2, from: 0.05, to: 0.35 };

const AMOUNTS = ["deflection", "rotationX", "rotationY", "Mx", "My", "Mxy", "Qx", "Qy"] as const;

/** Compares all amounts, each against the largest of its kind on the panel. */
function compare(
  a: (x: number, y: number) => PanelPoint,
  b: (x: number, y: number) => PanelPoint,
  { places, limits }: {
    readonly places: readonly (readonly [number, number])[];
    readonly limits: Readonly<Record<"deflection" | "rotation" | "moment" | "force", number>>;
  },
): void {
  const pairs = places.map(([x, y]) => [a(x, y), b(x, y)] as const);
  for (const amount of AMOUNTS) {
    const kind = amount.startsWith("M")
      ? "moment"
      : amount.startsWith("Q")
      ? "force"
      : amount.startsWith("rotation")
      ? "rotation"
      : "deflection";
    const like = AMOUNTS.filter((other) => other[0] === amount[0]);
    const size = Math.max(...pairs.flatMap(([p]) => like.map((other) => Math.abs(p[other]))));
    for (const [p, q] of pairs) {
      const where = `${amount} at ${p.x}, ${p.y}`;
      assertClose(q[amount], p[amount], { absolute: limits[kind] * size }, where);
    }
  }
}

const inside = [[0.3, 0.2], [0.17, 0.31], [0.05, 0.11], [0.55, 0.02]] as const;
const rim = [[0, 0.2], [0.3, 0], [0.6, 0.1], [0.2, 0.4]] as const;

Deno.test("sine waves across and the double series agree, inside", () => {
  // Tails of the double series at 999 terms: w 1/N⁴, M 1/N², Q 1/N of the load's jumps.
  const limits = { deflection: 1e-7, rotation: 1e-7, moment: 2e-6, force: 5e-4 };
  for (const load of [uniform, head, ramp, heel]) {
    const simple = panel(allEdges("simple"), load);
    compare(levyPanel(simple).at, navierPanel(simple, 999).at, { places: inside, limits });
  }
  // Across a line load forces jump, which costs the series one order.
  const rough = { deflection: 1e-5, rotation: 1e-5, moment: 1e-4, force: 6e-3 };
  for (const load of [rail, batten]) {
    const simple = panel(allEdges("simple"), load);
    compare(levyPanel(simple).at, navierPanel(simple, 999).at, { places: inside, limits: rough });
  }
});

Deno.test("the double series reaches edge forces only like 1/N, sine waves across do at once", () => {
  const simple = panel(allEdges("simple"), uniform);
  const exact = levyPanel(simple).at(0, 0.2).Qx;
  const error = (terms: number): number =>
    Math.abs(navierPanel(simple, terms).at(0, 0.2).Qx / exact - 1);
  assertClose(error(99) / error(199), 2, { relative: 0.05 });
  assert(error(99) > 5e-3);
});

Deno.test("the series across may run along either side", () => {
  const swapped: Panel = {
    length: 0.4,
    width: 0.6,
    stiffness: { ...sandwich, D11: 1.6e3, D22: 2e3, shear: { S44: 6.5e4, S45: 0, S55: 6e4 } },
    edges: { x0: "clamped", x1: "free", y0: "simple", y1: "simple" },
    loads: [{ ...heel, x: 0.15, y: 0.2, lengthX: 0.06, lengthY: 0.08 }, { ...ramp, along: "y" }],
  };
  const own = panel({ x0: "simple", x1: "simple", y0: "clamped", y1: "free" }, heel, ramp);
  const a = levyPanel(own).at(0.21, 0.12);
  const b = levyPanel(swapped).at(0.12, 0.21);
  assertClose(
    [b.deflection, b.rotationY, b.Mx, b.My, b.Mxy, b.Qx, b.Qy],
    [a.deflection, a.rotationX, a.My, a.Mx, a.Mxy, a.Qy, a.Qx],
    { relative: 1e-13 },
  );
});

const springs: EdgeSupport = { deflectionStiffness: 3e5, rotationStiffness: 5e3 };
const pairs: readonly (readonly [EdgeSupport, EdgeSupport])[] = [
  ["simple", "simple"],
  ["clamped", "clamped"],
  ["free", "free"],
  ["clamped", "free"],
  [springs, "simple"],
  [springs, springs],
];

for (const [y0, y1] of pairs) {
  const name = [y0, y1].map((edge) => typeof edge === "string" ? edge : "springs").join(" and ");
  Deno.test(`polynomials agree with sine waves across: ${name}`, () => {
    const mixed = panel({ x0: "simple", x1: "simple", y0, y1 }, uniform, head);
    const series = levyPanel(mixed);
    const limits = { deflection: 1e-6, rotation: 2e-6, moment: 3e-5, force: 1e-3 };
    compare(series.at, ritzPanel(mixed, 16).at, { places: inside, limits });
    // At the rim polynomials swing: moments and forces there converge slowly.
    const slow = { deflection: 1e-6, rotation: 2e-5, moment: 2e-3, force: 1e-2 };
    compare(series.at, ritzPanel(mixed, 16).at, { places: rim, limits: slow });
  });
}

Deno.test("polynomials converge: the change against two degrees less shows the error", () => {
  const mixed = panel({ x0: "simple", x1: "simple", y0: "clamped", y1: "free" }, uniform);
  const exact = levyPanel(mixed).at(0.3, 0.2).deflection;
  let before = 1;
  for (const degree of [6, 8, 10, 12]) {
    const { at, change } = ritzPanel(mixed, degree);
    const error = Math.abs(at(0.3, 0.2).deflection / exact - 1);
    assert(change < before, `change ${change} at degree ${degree}`);
    assert(error < 5 * change, `error ${error} against change ${change} at degree ${degree}`);
    before = change;
  }
});

Deno.test("a patch by polynomials: deflection to 2e-3, moments to a few per cent", () => {
  const simple = panel(allEdges("simple"), heel);
  const limits = { deflection: 2e-3, rotation: 5e-3, moment: 3e-2, force: 1 };
  const { at, notes } = ritzPanel(simple, 16);
  compare(levyPanel(simple).at, at, { places: [[0.2, 0.15], ...inside], limits });
  assert(notes.some((note) => note.includes("polynomials smooth a patch")));
});

Deno.test("plies that lie askew: a panel turned by its own symmetry deflects alike", () => {
  // Mirrored at y, +θ becomes −θ: D16 and D26 change sign.
  const askew = { ...sandwich, D16: 300, D26: 250 };
  const mirrored = { ...sandwich, D16: -300, D26: -250 };
  const base = panel({ ...allEdges("clamped"), x1: "free" }, uniform, heel);
  const other = { ...heel, y: 0.4 - 0.15 };
  const a = ritzPanel({ ...base, stiffness: askew }).at(0.55, 0.1);
  const b = ritzPanel({ ...base, stiffness: mirrored, loads: [uniform, other] }).at(0.55, 0.3);
  assertClose(b.deflection, a.deflection, { relative: 1e-10 });
  assertClose(b.Mxy, -a.Mxy, { relative: 1e-9 });
  const plain = ritzPanel(base).at(0.55, 0.1);
  assert(Math.abs(a.deflection / plain.deflection - 1) > 5e-3);
});

Deno.test("solvePanel takes the series where it can, else polynomials", () => {
  const series = solvePanel(panel(allEdges("simple"), uniform));
  assertEquals(series.method, "series");
  assertClose(series.reactions().load, 1e4 * 0.24, { relative: 1e-12 });
  assertEquals(solvePanel(panel(allEdges("clamped"), uniform)).method, "polynomials");
  // Two opposite edges must be simple, whichever pair; one of each pair is not enough.
  const held = (simple: readonly ("x0" | "x1" | "y0" | "y1")[]): string => {
    const edges = Object.fromEntries(simple.map((edge) => [edge, "simple"]));
    return solvePanel(panel({ ...allEdges("clamped"), ...edges }, uniform)).method;
  };
  assertEquals([held(["x0", "x1"]), held(["y0", "y1"])], ["series", "series"]);
  for (const pair of [["x0", "y0"], ["x0", "y1"], ["x1", "y0"], ["x1", "y1"]] as const) {
    assertEquals(held(pair), "polynomials");
  }
  for (const edge of ["x0", "x1", "y0", "y1"] as const) assertEquals(held([edge]), "polynomials");
  const askew = { ...panel(allEdges("simple"), uniform), stiffness: { ...sandwich, D16: 100 } };
  assertEquals(solvePanel(askew).method, "polynomials");
});

Deno.test("a field has the edges, and finds its largest", () => {
  const { at } = navierPanel(panel(allEdges("simple"), uniform), 49);
  const xs = [0, 0.15, 0.3];
  const ys = [0.1, 0.2];
  const grid = navierPanel(panel(allEdges("simple"), uniform), 49).deflectionGrid(xs, ys);
  xs.forEach((x, i) =>
    ys.forEach((y, j) => {
      assertClose(grid[2 * i + j]!, at(x, y).deflection, { relative: 1e-11, absolute: 1e-18 });
    })
  );
});

Deno.test("panels that a method cannot solve are refused", () => {
  const refused = (solve: (p: Panel) => unknown, change: object, message: string): void => {
    const wrong = { ...panel(allEdges("simple"), uniform), ...change };
    assertThrows(() => solve(wrong as Panel), InputError, message);
  };
  const askew = { stiffness: { ...sandwich, D16: 100 } };
  refused(levyPanel, askew, "use ritzPanel for plies that lie askew");
  refused(navierPanel, askew, "use ritzPanel for plies that lie askew");
  refused(levyPanel, { edges: allEdges("clamped") }, 'must have two opposite ones "simple"');
  refused(navierPanel, { edges: allEdges("free") }, 'edge x0 is "free", must be "simple"');
  refused(levyPanel, { supports: [{}] }, "must be none");
  refused(navierPanel, { supports: [{}] }, "must be none");
  refused((p) => navierPanel(p, 0), {}, "terms is 0");
  refused((p) => ritzPanel(p, 3), {}, "degree is 3");
  const huge = { loads: [{ kind: "uniform", pressure: 1e160 }] };
  refused(ritzPanel, huge, "work of the loads is Infinity J");
  refused((p) => levyPanel(p).at(0.7, 0), {}, "x is 0.7 m, must be between 0 and 0.6 m");
  refused((p) => ritzPanel(p).at(0, -1), {}, "y is -1 m");
  refused((p) => navierPanel(p).deflectionGrid([0.1], [0.5]), {}, "y is 0.5 m");
});

Deno.test("loads of a panel on simple supports along y are refused as they were given", () => {
  const edges = { x0: "free", x1: "clamped", y0: "simple", y1: "simple" } as const;
  for (
    const [load, message] of [
      [undefined, "load 1 is missing"],
      [{ ...heel, x: 0.59 }, "end of load 1 along x is 0.63 m"],
    ] as const
  ) {
    const wrong = { ...panel(edges, uniform), loads: [load] } as Panel;
    assertThrows(() => levyPanel(wrong), InputError, message);
  }
});

Deno.test("panels that cannot be meant are refused by every method", () => {
  const good = panel(allEdges("simple"), uniform);
  const wrongs: readonly (readonly [unknown, string])[] = [
    [undefined, "panel is missing"],
    [{ ...good, length: 0 }, "length is 0 m, must be above 0"],
    [{ ...good, width: NaN }, "width is NaN m"],
    [{ ...good, stiffness: undefined }, "stiffness is missing"],
    [{ ...good, stiffness: { ...sandwich, D11: -1 } }, "D11 is -1 N·m, must be above 0"],
    [{ ...good, stiffness: { ...sandwich, D12: 2e3 } }, "D12 is 2000"],
    [{ ...good, stiffness: { ...sandwich, D16: 2e3 } }, "must leave D positive definite"],
    [{ ...good, stiffness: { ...sandwich, shear: { S44: 0, S45: 0, S55: 1 } } }, "S44 is 0 N/m"],
    [{ ...good, stiffness: { ...sandwich, shear: { S44: 1, S45: 2, S55: 1 } } }, "S45 is 2"],
    [{ ...good, edges: undefined }, "edges is missing"],
    [{ ...good, edges: { ...good.edges, y1: "glued" } }, 'edge y1 is "glued", must be one of'],
    [
      {
        ...good,
        edges: { ...good.edges, y1: { deflectionStiffness: -1, rotationStiffness: 0 } },
      },
      "deflection stiffness of edge y1 is -1 N/m², must be 0 or above",
    ],
    [{ ...good, loads: undefined }, "loads is missing, must be a list"],
    [{ ...good, loads: [{ kind: "snow" }] }, 'kind of load 1 is "snow", must be one of'],
    [{ ...good, loads: [{ ...uniform, pressure: "1 bar" }] }, 'pressure of load 1 is "1 bar"'],
    [{ ...good, loads: [{ ...heel, x: 0.59 }] }, "end of load 1 along x is 0.63 m"],
    [{ ...good, loads: [{ ...heel, lengthX: 0 }] }, "length along x of load 1 is 0 m"],
    [{ ...good, loads: [uniform, { ...rail, at: 1 }] }, "place of load 2 is 1 m"],
    [{ ...good, loads: [{ ...rail, to: 0.1 }] }, "run of load 1 is 0 m"],
    [{ ...good, loads: [{ ...head, along: "z" }] }, 'direction of load 1 is "z"'],
  ];
  for (const [wrong, message] of wrongs) {
    for (const solve of [levyPanel, navierPanel, ritzPanel, solvePanel]) {
      const run = (): unknown => (solve as (p: Panel) => unknown)(wrong as Panel);
      assertThrows(run, InputError, message);
    }
  }
});
