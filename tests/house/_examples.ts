/**
 * Arguments that can be meant, taken from the examples in the documentation: each example is run
 * with every function of the library replaced by one that notes what it is called with.
 *
 * @module
 */
import type { DocFunction } from "./_doc.ts";

/** Argument lists by the name of the function. */
export type Calls = ReadonlyMap<string, readonly (readonly unknown[])[]>;

const IMPORT =
  /import\s+(type\s+)?(\{[^}]*\}|\*\s+as\s+\w+)\s+from\s+"@laminate\/notebooks\/(\w+)";?/g;

/** Runs the examples of a room; what each function of the library was called with. */
export async function callsInExamples(functions: readonly DocFunction[]): Promise<Calls> {
  const calls = new Map<string, unknown[][]>();
  const rooms: Record<string, Record<string, unknown>> = {};
  Reflect.set(globalThis, "__laminateRooms", rooms);
  for (const { examples } of functions) {
    for (const example of examples) {
      for (const [, , , room] of example.matchAll(IMPORT)) {
        rooms[room!] ??= noting(await import(`../../lib/${room}/mod.ts`), calls);
      }
      const code = example.replace(
        IMPORT,
        (_, type, names: string, room) =>
          type === undefined
            ? `const ${withoutTypes(names)} = globalThis.__laminateRooms.${room};`
            : "",
      );
      // An example that fails is told by the gate's step that runs them all.
      await import(`data:application/typescript,${encodeURIComponent(code)}`).catch(() => {});
    }
  }
  Reflect.deleteProperty(globalThis, "__laminateRooms");
  return calls;
}

function withoutTypes(names: string): string {
  return names.replace(/^\*\s+as\s+/, "").replace(/\btype\s+\w+\s*,?/g, "").replace(/ as /g, ": ");
}

/** Most calls of one function that are kept. */
const MOST = 40;

function noting(
  module: Readonly<Record<string, unknown>>,
  calls: Map<string, unknown[][]>,
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(module).map(([name, value]) => {
      // A class is no call of ours.
      if (typeof value !== "function" || /^class\b/.test(String(value))) return [name, value];
      const noted = (...args: unknown[]): unknown => {
        const known = calls.get(name) ?? [];
        calls.set(name, known);
        if (known.length < MOST) known.push(args);
        return value(...args);
      };
      return [name, noted];
    }),
  );
}
