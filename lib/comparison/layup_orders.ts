import { checksFor } from "../check/mod.ts";
import {
  engineeringConstants,
  type FreePanel,
  type FreeWarp,
  freeWarp,
  outOfFlat,
  plyOrders,
  stackDifferences,
} from "../laminate/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import type { LayerRecord, LayupRecord } from "../records/mod.ts";
import { checkLayup } from "./_layup_checks.ts";
import { layupCode } from "./layup_code.ts";
import { type KnownOfPart, layupStack } from "./layup_inputs.ts";

const check = checksFor("compare the orders of the plies");

/** A lay-up in one order of its plies, and what comes of it. */
export interface LaidOrder {
  /** The schedule in this order, its layers counted anew. */
  readonly layup: LayupRecord;
  /** Its stack. */
  readonly stack: Stack;
  /** Its orientation code in print signs. */
  readonly code: string;
  /** Whether it is mirrored about its middle. */
  readonly mirrored: boolean;
  /** The shape that a free sheet of it takes on. */
  readonly warp: FreeWarp;
  /** How far that sheet is out of flat [m]. */
  readonly gap: number;
  /** Modulus in bending along x, the middle free to stretch [Pa]. */
  readonly bendingModulus: number;
}

/** The orders in which the plies of a lay-up can be laid, side by side. */
export interface OrderComparison {
  /** As it is scheduled. */
  readonly laid: LaidOrder;
  /** The stiffest in bending along x of those that are within 0.1 mm of the flattest. */
  readonly flattest: LaidOrder;
  /** The one farthest out of flat. */
  readonly worst: LaidOrder;
  /** All that were looked at, as scheduled first. */
  readonly orders: readonly LaidOrder[];
  /** Whether these are all orders that can be laid; see `plyOrders`. */
  readonly complete: boolean;
}

/** Closer than this, one sheet is as flat as another: less than a ruler shows [m]. */
const AS_FLAT = 0.1e-3;
/** Stiffer by less than this is as stiff [1]. */
const AS_STIFF = 1e-9;

/**
 * A lay-up beside the same plies in other orders: how far a free sheet is out of flat after a
 * change of temperature, and how stiff it bends. Cores stay inside.
 *
 * Formula: for each of `plyOrders`: `freeWarp`, `outOfFlat` and the flexural Ex of
 * `engineeringConstants`
 *
 * Range: as `freeWarp`
 *
 * Source: as the functions named.
 *
 * @param layup The schedule, materials filled in; a core must not lie outside.
 * @param panel Size of the sheet and the change since it was free of stress [m], [K].
 * @param known What was weighed or measured [SI].
 * @returns The schedule, its flattest and its worst order, and all orders.
 * @throws {InputError} If the schedule has no ply or a core outside, or the panel cannot be meant.
 *
 * @example
 * ```ts
 * import { compareOrders } from "@laminate/notebooks/comparison";
 * import { readPart } from "@laminate/notebooks/records";
 * import { assert, assertEquals } from "@std/assert";
 *
 * const { layups } = await readPart("data/sole-panels");
 * const { laid, flattest } = compareOrders(
 *   layups.get("trial hatch")!,
 *   { lengthX: 0.52, lengthY: 0.42, temperatureChange: -45 },
 * );
 * assert(laid.gap > 0.005);
 * assertEquals(flattest.code, "[0/90/core|]s");
 * ```
 */
export function compareOrders(
  layup: LayupRecord,
  panel: FreePanel,
  known: KnownOfPart = {},
): OrderComparison {
  checkLayup(check, layup);
  check.object("panel", panel);
  const stack = layupStack(layup, known);
  const layers = new Map<Ply, LayerRecord>(stack.map((ply, i) => [ply, layup.layers[i]!]));
  const cores = layup.layers.flatMap((layer, i) =>
    layer.kind === "core" ? [stack[i]!.lamina.name] : []
  );
  const { orders, complete } = plyOrders(stack, { inside: cores });
  const compared = orders.map((order) => {
    const relaid = order.map((ply, i) => ({ ...layers.get(ply)!, layer: i + 1 }));
    return laidOrder({ name: layup.name, layers: relaid }, order, panel);
  });
  const smallest = Math.min(...compared.map(({ gap }) => gap));
  const stiffer = (a: LaidOrder, b: LaidOrder): LaidOrder =>
    b.bendingModulus > a.bendingModulus * (1 + AS_STIFF) ? b : a;
  return Object.freeze({
    laid: compared[0]!,
    flattest: compared.filter(({ gap }) => gap <= smallest + AS_FLAT).reduce(stiffer),
    worst: compared.reduce((a, b) => b.gap > a.gap ? b : a),
    orders: Object.freeze(compared),
    complete,
  });
}

function laidOrder(layup: LayupRecord, stack: Stack, panel: FreePanel): LaidOrder {
  const warp = freeWarp(stack, panel);
  return Object.freeze({
    layup: Object.freeze(layup),
    stack,
    code: layupCode(layup).text,
    mirrored: stackDifferences(stack, stack.toReversed()).length === 0,
    warp,
    gap: outOfFlat(warp.curvature, panel),
    bendingModulus: engineeringConstants(stack).flexuralFree.Ex,
  });
}
