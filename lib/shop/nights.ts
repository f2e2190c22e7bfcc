import { checksFor } from "../check/mod.ts";

const check = checksFor("plan the nights");

/** One piece of work and the wait after it. */
export interface Operation {
  /** What it is; other operations refer to it by this. */
  readonly name: string;
  /** Operations that must be done and cured before this one. */
  readonly after: readonly string[];
  /** Time with hands on it [s]. */
  readonly handsOn: number;
  /** Time it must stand before the next operation; 0 if it need not [s]. */
  readonly wait: number;
}

/** When the crew meets. */
export interface Sessions {
  /** How long a session lasts [s]. */
  readonly length: number;
  /** From one session's end to the next one's start; sessions are a day apart [s]. */
  readonly gap: number;
}

/** One operation in the calendar. */
export interface PlannedOperation extends Operation {
  /** Session in which it is done, the first being 1 [1]. */
  readonly session: number;
  /** Nights that pass before what comes after it [1]. */
  readonly nights: number;
  /** Whether a delay here delays the whole part. */
  readonly critical: boolean;
}

/** The operations in the calendar. */
export interface NightsPlan {
  /** Each operation with its session, in the order given. */
  readonly operations: readonly PlannedOperation[];
  /** Sessions that the crew has to come [1]. */
  readonly sessions: number;
  /** Nights from the first session until the last operation has cured [1]. */
  readonly nights: number;
  /** One longest chain of operations, first to last. */
  readonly criticalPath: readonly string[];
  /** What to know about it. */
  readonly notes: readonly string[];
}

const DAY = 86_400;

/**
 * Sessions and nights that a part takes, along the chain of operations that wait for one another.
 *
 * Formula: nights after an operation = 0 without wait, 1 if it cures within the gap, else
 * 1 + ⌈(wait − gap)/24 h⌉; session = the latest of session + nights over what comes before
 *
 * Range: sessions a day apart; the crew is large enough to do unrelated operations in one session.
 * A session with more work on one chain than it is long is noted.
 *
 * Source: critical path method, any text on planning.
 *
 * @param operations The work, each naming what must come before.
 * @param sessions Length of a session and the gap between two [s].
 * @returns Session of each operation, nights in all and the critical path.
 * @throws {InputError} If a name is missing, twice, or an operation waits for itself in a circle.
 *
 * @example
 * ```ts
 * import { planNights } from "@laminate/notebooks/shop";
 * import { assertEquals } from "@std/assert";
 *
 * const hour = 3600;
 * const plan = planNights([
 *   { name: "skin", after: [], handsOn: 2 * hour, wait: 12 * hour },
 *   { name: "core", after: ["skin"], handsOn: hour, wait: 12 * hour },
 *   { name: "flip and skin", after: ["core"], handsOn: 2 * hour, wait: 12 * hour },
 * ], { length: 4 * hour, gap: 20 * hour });
 * assertEquals([plan.sessions, plan.nights], [3, 3]);
 * ```
 */
export function planNights(
  operations: readonly Operation[],
  sessions: Sessions,
): NightsPlan {
  checkOperations(operations);
  const { length, gap } = check.object("sessions", sessions);
  check.positive("length of a session", length, "s");
  check.positive("gap between sessions", gap, "s");
  const byName = new Map(operations.map((operation) => [operation.name, operation]));
  const nightsAfter = ({ wait }: Operation): number =>
    wait === 0 ? 0 : wait <= gap ? 1 : 1 + Math.ceil((wait - gap) / DAY);
  const placed = placeAll(operations, byName, nightsAfter);
  const ready = (name: string): number =>
    placed.get(name)!.session + nightsAfter(byName.get(name)!);
  const end = Math.max(...operations.map(({ name }) => ready(name)));
  const last = operations.find(({ name }) => ready(name) === end)!.name;
  const criticalPath: string[] = [];
  for (let at: string | undefined = last; at !== undefined; at = placed.get(at)!.waitsFor) {
    criticalPath.unshift(at);
  }
  return {
    operations: operations.map((operation) => ({
      ...operation,
      session: placed.get(operation.name)!.session,
      nights: nightsAfter(operation),
      critical: criticalPath.includes(operation.name),
    })),
    sessions: new Set([...placed.values()].map(({ session }) => session)).size,
    nights: end - 1,
    criticalPath,
    notes: overlong([...placed.values()], length),
  };
}

/** Where an operation stands, and the chain of work before it in the same session. */
interface Placed {
  readonly session: number;
  readonly waitsFor: string | undefined;
  /** Hands-on time of the longest chain in this session, this operation included [s]. */
  readonly chain: number;
}

function placeAll(
  operations: readonly Operation[],
  byName: ReadonlyMap<string, Operation>,
  nightsAfter: (operation: Operation) => number,
): ReadonlyMap<string, Placed> {
  const placed = new Map<string, Placed>();
  const open = new Set<string>();
  const place = (operation: Operation): Placed => {
    const known = placed.get(operation.name);
    if (known !== undefined) return known;
    if (open.has(operation.name)) {
      check.refuse("operation", operation.name, "must not wait for itself in a circle");
    }
    open.add(operation.name);
    let session = 1;
    let waitsFor: string | undefined;
    let chain = 0;
    for (const name of operation.after) {
      const before = byName.get(name)!;
      const { session: earlier, chain: work } = place(before);
      const earliest = earlier + nightsAfter(before);
      const inSession = earliest === earlier ? work : 0;
      const later = earliest > session ||
        (earliest === session && (waitsFor === undefined || inSession > chain));
      if (later) [session, waitsFor, chain] = [earliest, name, inSession];
    }
    const found = { session, waitsFor, chain: chain + operation.handsOn };
    placed.set(operation.name, found);
    return found;
  };
  operations.forEach(place);
  return placed;
}

function overlong(placed: readonly Placed[], length: number): readonly string[] {
  const sessions = placed.filter(({ chain }) => chain > length).map(({ session }) => session);
  return [...new Set(sessions)].toSorted((a, b) => a - b).map((session) =>
    `Session ${session} holds more work, one piece after the other, than it is long.`
  );
}

function checkOperations(operations: readonly Operation[]): void {
  check.list("operations", operations);
  const names = new Set<string>();
  for (const operation of operations) {
    const { name, handsOn, wait } = check.object("operation", operation);
    check.text("name", name);
    if (names.has(name)) check.refuse("name", name, "must not stand twice");
    names.add(name);
    check.nonNegative(`time with hands on ${name}`, handsOn, "s");
    check.nonNegative(`wait after ${name}`, wait, "s");
    check.list(`what comes before ${name}`, operation.after, 0);
  }
  for (const { name, after } of operations) {
    for (const other of after) {
      if (!names.has(other)) {
        check.refuse(`what comes before ${name}`, other, "must be an operation");
      }
    }
  }
}
