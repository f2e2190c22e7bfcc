import { checksFor } from "../check/mod.ts";
import type { Ply, Stack } from "../materials/mod.ts";
import { checkStack } from "./_checks.ts";

const check = checksFor("list the orders of the plies");

/** Which orders of the plies may be laid. */
export interface OrderRules {
  /** Names of laminae that must not lie outside, such as a core; none if left out. */
  readonly inside?: readonly string[];
  /** Most orders to list; 2000 if left out [1]. */
  readonly most?: number;
}

/** The orders in which the same plies can be laid. */
export interface PlyOrders {
  /** Stacks of the same plies, that which was given first. */
  readonly orders: readonly Stack[];
  /** Whether these are all; if not, they are those that one swap of two plies leads to. */
  readonly complete: boolean;
}

const MOST = 2000;

/**
 * The orders in which the plies of a stack can be laid, each once. Plies are compared by the name
 * of their lamina, their thickness and their angle; an order from the other side is the same sheet
 * turned over.
 *
 * Formula: permutations of the plies; where they are more than `most`, the stacks that come of
 * swapping two plies
 *
 * Range: 1 to 1000 plies
 *
 * Source: definition
 *
 * @param stack Plies, mould side first.
 * @param rules Laminae that stay inside, and the most orders to list [1].
 * @returns The stacks, that which was given first.
 * @throws {InputError} If the stack is empty or too long, a ply is not possible, a lamina that
 * must stay inside lies outside, or the number of orders is no count.
 *
 * @example
 * ```ts
 * import { plyOrders, stackOfCode } from "@laminate/notebooks/laminate";
 * import { assertEquals } from "@std/assert";
 *
 * const lamina = {
 *   name: "glass ply", E1: 40e9, E2: 10e9, G12: 4e9, nu12: 0.28, G13: 4e9, G23: 3e9,
 *   density: 1900, alpha1: 7e-6, alpha2: 25e-6,
 * };
 * const stack = stackOfCode("[0_2/90_2]", { ply: { lamina, thickness: 0.25e-3 } });
 * const angles = plyOrders(stack).orders.map((order) => order.map((ply) => ply.angleDeg).join());
 * assertEquals(angles, ["0,0,90,90", "0,90,0,90", "0,90,90,0", "90,0,0,90"]);
 * ```
 */
export function plyOrders(stack: Stack, rules: OrderRules = {}): PlyOrders {
  checkStack(check, stack);
  check.within("number of plies", stack.length, { min: 1, max: 1000 });
  check.object("rules", rules);
  const { inside = [], most = MOST } = rules;
  check.list("names of laminae inside", inside, 0);
  check.count("most orders", most, 1);
  check.within("most orders", most, { min: 1, max: 1e5 });
  const may = (order: readonly Ply[]): boolean =>
    ![order[0]!, order.at(-1)!].some(({ lamina }) => inside.includes(lamina.name));
  if (!may(stack)) {
    check.refuse("outer ply", stack[0]!.lamina.name, `must not be one of: ${inside.join(", ")}`);
  }
  const kinds = kindsOf(stack);
  const given = kinds.places;
  const all = countOrders(kinds) <= 2 * most;
  const found = new Map<string, readonly number[]>([[sheetKey(given), given]]);
  for (const places of all ? permutations(kinds) : swaps(given)) {
    const key = sheetKey(places);
    if (!found.has(key) && may(places.map((kind) => kinds.plies[kind]!))) found.set(key, places);
  }
  const orders = [...found.values()].map((places) => places.map((kind) => kinds.plies[kind]!));
  return { orders: orders.slice(0, most), complete: all && orders.length <= most };
}

/** The different plies of a stack, how many there are of each, and which lies where. */
interface Kinds {
  readonly plies: readonly Ply[];
  readonly counts: readonly number[];
  readonly places: readonly number[];
}

function kindsOf(stack: Stack): Kinds {
  const plies: Ply[] = [];
  const counts: number[] = [];
  const places = stack.map((ply) => {
    let kind = plies.findIndex((other) => isSame(ply, other));
    if (kind < 0) kind = plies.push(ply) - 1;
    counts[kind] = (counts[kind] ?? 0) + 1;
    return kind;
  });
  return { plies, counts, places };
}

function isSame(a: Ply, b: Ply): boolean {
  return a.lamina.name === b.lamina.name && a.thickness === b.thickness &&
    (a.angleDeg - b.angleDeg) % 180 === 0;
}

/** n!/(n1! n2! …), as a product that stays small for as long as it can. */
function countOrders({ counts }: Kinds): number {
  let [orders, placed] = [1, 0];
  for (const count of counts) {
    for (let k = 1; k <= count; k++) orders *= ++placed / k;
  }
  return orders;
}

/** The same for an order and for the order from the other side. */
function sheetKey(places: readonly number[]): string {
  const [one, other] = [places.join(), places.toReversed().join()];
  return one < other ? one : other;
}

function* permutations({ counts, places }: Kinds): Generator<readonly number[]> {
  const left = [...counts];
  const laid: number[] = [];
  function* next(): Generator<readonly number[]> {
    if (laid.length === places.length) yield [...laid];
    for (let kind = 0; kind < left.length; kind++) {
      if (left[kind] === 0) continue;
      left[kind]!--;
      laid.push(kind);
      yield* next();
      laid.pop();
      left[kind]!++;
    }
  }
  yield* next();
}

function* swaps(places: readonly number[]): Generator<readonly number[]> {
  for (let i = 0; i < places.length; i++) {
    for (let j = i + 1; j < places.length; j++) {
      if (places[i] === places[j]) continue;
      const swapped = [...places];
      [swapped[i], swapped[j]] = [places[j]!, places[i]!];
      yield swapped;
    }
  }
}
