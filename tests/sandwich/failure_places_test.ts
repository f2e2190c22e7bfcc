import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import {
  allEdges,
  failurePlaces,
  levyPanel,
  navierPanel,
  type PanelLoad,
  type PanelPlace,
} from "../../lib/sandwich/mod.ts";
import { assertClose } from "../close.ts";

const sides = { length: 0.6, width: 0.4 };
const has = (places: readonly PanelPlace[], x: number, y: number): boolean =>
  places.some((place) => Math.hypot(place.x - x, place.y - y) < 1e-12);

Deno.test("a grid, and for each patch, line and pad its middle, its rim, and the edges beside", () => {
  const loads: readonly PanelLoad[] = [
    { kind: "uniform", pressure: 1 },
    { kind: "patch", force: 1, x: 0.26, y: 0.17, lengthX: 0.06, lengthY: 0.04 },
    { kind: "line", along: "y", force: 1, at: 0.5, from: 0.1, to: 0.3 },
  ];
  const pad = { name: "pad", stiffness: 1, oneWay: false, side: "far", preload: 0 } as const;
  const supports = [{ ...pad, x: 0.1, y: 0.1, padX: 0.02, padY: 0.02 }];
  const places = failurePlaces({ ...sides, loads, supports }, 3);
  assertEquals(places.length, 9 + 3 * 9);
  const wanted = [
    [0.3, 0.2],
    [0.6, 0.4],
    [0.26, 0.17],
    [0.23, 0.17],
    [0.29, 0.17],
    [0.26, 0.15],
    [0.26, 0.19],
    [0, 0.17],
    [0.26, 0.4],
    [0.5, 0.1],
    [0.5, 0.3],
    [0.11, 0.1],
  ];
  for (const [x = 0, y = 0] of wanted) assert(has(places, x, y), `${x}, ${y}`);
  const ys = places.map(({ y }) => y);
  assertEquals(ys, ys.toSorted((a, b) => a - b));
});

Deno.test("a patch at the very edge stays on the panel", () => {
  const loads = [{
    kind: "patch",
    force: 1,
    x: 0.02,
    y: 0.39,
    lengthX: 0.06,
    lengthY: 0.06,
  }] as const;
  for (const { x, y } of failurePlaces({ ...sides, loads }, 2)) {
    assert(x >= 0 && x <= 0.6 && y >= 0 && y <= 0.4);
  }
});

Deno.test("completed shear forces are those of the single series", () => {
  const shear = { S44: 2.9e5, S45: 0, S55: 2.9e5 };
  const stiffness = {
    D11: 409,
    D12: 56,
    D16: 0,
    D22: 409,
    D26: 0,
    D66: 57,
    shear,
    massPerArea: 1,
    notes: [],
  };
  const heel = (x: number, y: number): PanelLoad => ({
    kind: "patch",
    force: 1000,
    x,
    y,
    lengthX: 0.06,
    lengthY: 0.06,
  });
  const water: PanelLoad = { kind: "linear", along: "y", atStart: 2000, atEnd: 9000 };
  const cases: readonly (readonly [PanelLoad, number, number, "Qx" | "Qy"])[] = [
    [water, 0, 0.2, "Qx"],
    [water, 0.3, 0.4, "Qy"],
    [heel(0.3, 0.2), 0.27, 0.2, "Qx"],
    [heel(0.3, 0.2), 0.3, 0.23, "Qy"],
    [heel(0.26, 0.17), 0.29, 0.17, "Qx"],
    [heel(0.3, 0.06), 0.3, 0.03, "Qy"],
    [{ kind: "line", along: "y", force: 500, at: 0.3, from: 0.05, to: 0.35 }, 0, 0.2, "Qx"],
  ];
  for (const [load, x, y, force] of cases) {
    const panel = { ...sides, stiffness, edges: allEdges("simple"), loads: [load] };
    const exact = levyPanel(panel).at(x, y)[force];
    for (const [terms, relative] of [[25, 0.03], [49, 0.02], [199, 0.002]] as const) {
      const series = navierPanel(panel, terms);
      assertClose(series.completedAt(x, y)[force], exact, { relative });
      const { deflection, Mx } = series.at(x, y);
      assertClose([series.completedAt(x, y).deflection, series.completedAt(x, y).Mx], [
        deflection,
        Mx,
      ], { relative: 1e-15, absolute: 1e-15 });
    }
  }
  const edge = navierPanel({ ...sides, stiffness, edges: allEdges("simple"), loads: [water] });
  assertThrows(() => edge.completedAt(0.7, 0), InputError, "x is 0.7 m");
});

Deno.test("panels and loads that cannot be meant are refused", () => {
  const refused = (change: object, grid: number, words: string): void => {
    assertThrows(
      () => failurePlaces({ ...sides, loads: [], ...change }, grid),
      InputError,
      words,
    );
  };
  refused({}, 1, "grid is 1");
  refused({ width: 0 }, 3, "width is 0 m");
  refused({ loads: [null] }, 3, "load 1");
  refused({ loads: [{ kind: "patch", x: NaN }] }, 3, "x of load 1 is NaN m");
  refused({ loads: undefined }, 3, "loads is missing");
  refused({ supports: [{ x: 0.1 }] }, 3, "y of support 1");
});
