import { assert, assertEquals } from "@std/assert";
import { join } from "@std/path";
import { documented } from "./_doc.ts";
import { ROOMS, ROOT } from "./_source.ts";

/** Rooms whose functions are equations: each names its source. */
const FORMULA_ROOMS = [
  "constituents",
  "micromechanics",
  "laminate",
  "sandwich",
  "filler",
  "joints",
  "shop",
];

interface DocTag {
  readonly kind: string;
  readonly name?: string;
  readonly doc?: string;
}

interface Param {
  readonly kind: string;
  readonly name?: string;
  readonly left?: Param;
}

interface Declaration {
  readonly kind: string;
  readonly declarationKind: string;
  readonly jsDoc?: { readonly doc?: string; readonly tags?: readonly DocTag[] };
  readonly def?: {
    readonly params?: readonly Param[];
    readonly returnType?: { readonly repr?: string; readonly kind?: string };
  };
}

interface Symbol {
  readonly name: string;
  readonly declarations: readonly Declaration[];
}

/** The exported functions of a room, as `deno doc` sees them. */
function exportedFunctions(room: string): readonly (Declaration & { readonly name: string })[] {
  const path = join(ROOT, "lib", room, "mod.ts");
  const { stdout, success, stderr } = new Deno.Command(Deno.execPath(), {
    args: ["doc", "--json", path],
    env: { NO_COLOR: "1" },
  }).outputSync();
  if (!success) throw new Error(new TextDecoder().decode(stderr));
  const nodes = JSON.parse(new TextDecoder().decode(stdout)).nodes as Record<
    string,
    { readonly symbols: readonly Symbol[] }
  >;
  const found = Object.values(nodes).flatMap(({ symbols }) =>
    symbols.flatMap(({ name, declarations }) =>
      declarations.filter(({ kind }) => kind === "function").map((entry) => ({ ...entry, name }))
    )
  );
  return found;
}

function faults(room: string, fn: Declaration & { readonly name: string }): readonly string[] {
  const { doc = "", tags = [] } = fn.jsDoc ?? {};
  const said = (kind: string): readonly DocTag[] => tags.filter((tag) => tag.kind === kind);
  const missing: string[] = [];
  if (doc.trim() === "") missing.push("a sentence that says what it answers");
  if (said("return").length === 0 && fn.def?.returnType?.repr !== "void") missing.push("@returns");
  if (said("example").length === 0) missing.push("@example");
  const parameters = fn.def?.params?.length ?? 0;
  if (parameters > 3) missing.push(`three parameters or fewer (it has ${parameters})`);
  if (said("param").length < parameters) missing.push("@param for each argument");
  if (FORMULA_ROOMS.includes(room)) {
    if (!/\bSource:/.test(doc)) missing.push("Source:");
    const unit = /\[[^\]]+\]/.test(said("return")[0]?.doc ?? "");
    if (fn.def?.returnType?.repr === "number" && !unit) missing.push("unit of the result");
  }
  return missing.map((what) => `${room}: ${fn.name} lacks ${what}`);
}

Deno.test("every public function says what it answers, its units, its source and an example", () => {
  const rooms = ROOMS.filter((room) => {
    try {
      return Deno.statSync(join(ROOT, "lib", room, "mod.ts")).isFile;
    } catch {
      return false;
    }
  });
  const functions = rooms.map((room) => ({ room, found: exportedFunctions(room) }));
  const counted = functions.reduce((sum, { found }) => sum + found.length, 0);
  assertEquals(
    counted > 50,
    true,
    `deno doc shows only ${counted} functions: has its form changed?`,
  );
  assertEquals(
    functions.flatMap(({ room, found }) => found.flatMap((fn) => faults(room, fn))),
    [],
  );
});

Deno.test("every room says where to start, by names that it exports, and gives an example", async () => {
  const rooms = documented();
  assertEquals([...rooms.keys()].toSorted(), ROOMS.toSorted());
  for (const [room, symbols] of rooms) {
    const text = await Deno.readTextFile(join(ROOT, "lib", room, "mod.ts"));
    const [comment = ""] = text.match(/^\/\*\*[^]*?\*\//) ?? [];
    const [, ...start] = comment.split("Start with ");
    const named = [...start.join().matchAll(/\{@link (\w+)\}/g)].map(([, name]) => name!);
    assert(named.length > 1, `${room} does not say where to start`);
    const exported = symbols.map(({ name }) => name);
    assertEquals(named.filter((name) => !exported.includes(name)), [], room);
    assert(/@example .*\n \* ```ts\n/.test(comment), `${room} gives no example`);
  }
});
