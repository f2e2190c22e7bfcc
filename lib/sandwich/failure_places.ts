import { checksFor } from "../check/mod.ts";
import type { Panel, PanelLoad, PointSupport } from "./panel.ts";

const check = checksFor("find the places to look at");

/** A place of a panel. */
export interface PanelPlace {
  /** Along x [m]. */
  readonly x: number;
  /** Along y [m]. */
  readonly y: number;
}

/** A rectangle on the panel; a side of 0 is a line or a point. */
interface Spot extends PanelPlace {
  readonly lengthX: number;
  readonly lengthY: number;
}

/**
 * Places at which a panel may give first: a grid, and for each patch, line and pad its middle, the
 * middles of its rim, where the core's shear peaks, and the places of the edges beside it.
 *
 * Formula: none; places along x of one y follow each other, so that a series keeps what it has
 * found for that y
 *
 * Range: panels on their edges or on pads; between the places of the grid a field changes slowly.
 *
 * Source: definition.
 *
 * @param panel Sides [m], loads, supports.
 * @param grid Places of the grid along each side; 2 to 50.
 * @returns The places, in rising order of y.
 * @throws {InputError} If a side is not above 0, a load is no load, or the grid is too coarse.
 *
 * @example The rim of a heel
 * ```ts
 * import { failurePlaces } from "@laminate/notebooks/sandwich";
 * import { assert } from "@std/assert";
 *
 * const heel = { kind: "patch", force: 900, x: 0.26, y: 0.2, lengthX: 0.06, lengthY: 0.06 } as const;
 * const places = failurePlaces({ length: 0.6, width: 0.4, loads: [heel] }, 5);
 * assert(places.some(({ x, y }) => Math.abs(x - 0.23) < 1e-12 && y === 0.2));
 * ```
 */
export function failurePlaces(
  panel: Pick<Panel, "length" | "width" | "loads" | "supports">,
  grid: number,
): readonly PanelPlace[] {
  check.object("panel", panel);
  const { length, width, loads, supports = [] } = panel;
  check.positive("length", length, "m");
  check.positive("width", width, "m");
  check.count("grid", grid, 2);
  check.within("grid", grid, { min: 2, max: 50 });
  check.list("loads", loads, 0);
  check.list("supports", supports, 0);
  const shares = Array.from({ length: grid }, (_, i) => i / (grid - 1));
  const inside = (place: number, side: number): number => Math.min(Math.max(place, 0), side);
  const spots = [...loads.flatMap(spotOfLoad), ...supports.map(spotOfSupport)];
  const places = [
    ...shares.flatMap((j) => shares.map((i) => ({ x: i * length, y: j * width }))),
    ...spots.flatMap(({ x, y, lengthX, lengthY }) => [
      { x, y },
      ...[x - lengthX / 2, x + lengthX / 2, 0, length].map((at) => ({ x: at, y })),
      ...[y - lengthY / 2, y + lengthY / 2, 0, width].map((at) => ({ x, y: at })),
    ]),
  ].map(({ x, y }) => ({ x: inside(x, length), y: inside(y, width) }));
  return Object.freeze(places.toSorted((a, b) => a.y - b.y));
}

function spotOfLoad(load: PanelLoad, i: number): readonly Spot[] {
  check.object(`load ${i + 1}`, load);
  const finite = (name: string, value: number): number =>
    check.finite(`${name} of load ${i + 1}`, value, "m");
  if (load.kind === "patch") {
    return [{
      x: finite("x", load.x),
      y: finite("y", load.y),
      lengthX: finite("length along x", load.lengthX),
      lengthY: finite("length along y", load.lengthY),
    }];
  }
  if (load.kind !== "line") return [];
  const middle = (finite("start", load.from) + finite("end", load.to)) / 2;
  const run = load.to - load.from;
  const at = finite("place", load.at);
  return load.along === "x"
    ? [{ x: middle, y: at, lengthX: run, lengthY: 0 }]
    : [{ x: at, y: middle, lengthX: 0, lengthY: run }];
}

function spotOfSupport(support: PointSupport, i: number): Spot {
  check.object(`support ${i + 1}`, support);
  const { x, y, padX = 0, padY = 0 } = support;
  return {
    x: check.finite(`x of support ${i + 1}`, x, "m"),
    y: check.finite(`y of support ${i + 1}`, y, "m"),
    lengthX: check.finite(`pad along x of support ${i + 1}`, padX, "m"),
    lengthY: check.finite(`pad along y of support ${i + 1}`, padY, "m"),
  };
}
