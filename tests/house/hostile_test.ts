import { assertEquals } from "@std/assert";
import fc from "fast-check";
import { join } from "@std/path";
import { InputError } from "../../lib/check/mod.ts";
import {
  type DocSymbol,
  type DocType,
  firstNonFinite,
  inputsFor,
  type Symbols,
} from "./_hostile.ts";
import { ROOMS, ROOT } from "./_source.ts";

/** How often each function is called; `HOSTILE_RUNS=10000` for a long run by hand. */
const RUNS = Number(Deno.env.get("HOSTILE_RUNS") ?? 150);

interface DocParam {
  readonly kind: string;
  readonly name?: string;
  readonly optional?: boolean;
  readonly tsType?: DocType;
  readonly left?: DocParam;
}

/** Every name that the library exports, room by room. */
function documented(): ReadonlyMap<string, readonly DocSymbol[]> {
  const paths = ROOMS.map((room) => join(ROOT, "lib", room, "mod.ts"))
    .filter((path) => existing(path));
  const { stdout } = new Deno.Command(Deno.execPath(), { args: ["doc", "--json", ...paths] })
    .outputSync();
  const nodes = JSON.parse(new TextDecoder().decode(stdout)).nodes as Record<
    string,
    { readonly symbols: readonly DocSymbol[] }
  >;
  return new Map(
    Object.entries(nodes).map(([path, { symbols }]) => [path.split("/").at(-2)!, symbols]),
  );
}

function existing(path: string): boolean {
  try {
    return Deno.statSync(path).isFile;
  } catch {
    return false;
  }
}

const rooms = documented();
const symbols: Symbols = new Map(
  [...rooms.values()].flat().map((symbol) => [symbol.name, symbol]),
);
let calls = 0;

for (const [room, exported] of rooms) {
  Deno.test(`${room}: no input brings out NaN, Infinity or anything but an InputError`, async () => {
    const module = await import(`../../lib/${room}/mod.ts`);
    const offences: string[] = [];
    for (const { name, declarations } of exported) {
      const def = declarations.find(({ kind }) => kind === "function")?.def;
      if (def === undefined || def.isAsync || def.returnType?.repr === "Promise") continue;
      const offence = attack(module[name], def.params, name);
      if (offence !== undefined) offences.push(offence);
    }
    assertEquals(offences, []);
  });
}

Deno.test("the attack reached the library", () => {
  assertEquals(calls > 100 * RUNS, true, `only ${calls} calls: has deno doc changed its form?`);
});

/** Calls a function with many inputs; the first offence, if there is one. */
function attack(
  // deno-lint-ignore no-explicit-any
  f: (...args: any[]) => unknown,
  params: readonly DocParam[],
  name: string,
): string | undefined {
  const inputs = fc.tuple(...params.map((param) => {
    const { tsType, name: comment = "" } = param.left ?? param;
    return inputsFor(tsType, { comment, symbols });
  }));
  const property = fc.property(inputs, (args) => {
    calls++;
    const found = outcome(() => f(...args));
    if (found !== undefined) throw new Error(found);
  });
  const details = fc.check(property, { seed: 20261125, numRuns: RUNS });
  if (!details.failed) return undefined;
  const reason = (details.errorInstance as Error | undefined)?.message;
  return `${name}(${fc.stringify(details.counterexample?.[0]).slice(1, 300)}): ${reason}`;
}

/** What a call did that it must not do. */
function outcome(call: () => unknown): string | undefined {
  try {
    return firstNonFinite(call());
  } catch (error) {
    if (!(error instanceof InputError)) {
      return `threw ${error instanceof Error ? `${error.name}: ${error.message}` : error}`;
    }
    return error.faults.every(({ argument }) => argument !== "")
      ? undefined
      : `an InputError without an argument: ${error.message}`;
  }
}
