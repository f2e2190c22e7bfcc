import { join } from "@std/path";
import { ROOMS, ROOT } from "./_source.ts";

/** A type as `deno doc --json` gives it. */
export interface DocType {
  readonly kind: string;
  readonly repr?: string;
  // deno-lint-ignore no-explicit-any
  readonly value: any;
}

/** A parameter of a function. */
export interface DocParam {
  readonly kind: string;
  readonly name?: string;
  readonly optional?: boolean;
  readonly tsType?: DocType;
  /** What stands left of a default. */
  readonly left?: DocParam;
}

/** A property of an interface or of an object type. */
export interface DocProperty {
  readonly name: string;
  readonly optional?: boolean;
  readonly tsType?: DocType;
  readonly jsDoc?: { readonly doc?: string };
}

/** A tag of a comment. */
export interface DocTag {
  readonly kind: string;
  readonly name?: string;
  readonly doc?: string;
}

/** One meaning of a name. */
export interface DocDeclaration {
  readonly kind: string;
  readonly jsDoc?: { readonly doc?: string; readonly tags?: readonly DocTag[] };
  // deno-lint-ignore no-explicit-any
  readonly def?: any;
}

/** What is documented under a name. */
export interface DocSymbol {
  readonly name: string;
  readonly declarations: readonly DocDeclaration[];
}

/** Every documented name. */
export type Symbols = ReadonlyMap<string, DocSymbol>;

/** An exported function. */
export interface DocFunction {
  readonly name: string;
  readonly params: readonly {
    readonly tsType: DocType | undefined;
    /** What its comment says of it. */
    readonly comment: string;
  }[];
  /** Code of its examples. */
  readonly examples: readonly string[];
}

/** Every name that the library exports, room by room. */
export function documented(): ReadonlyMap<string, readonly DocSymbol[]> {
  const paths = ROOMS.map((room) => join(ROOT, "lib", room, "mod.ts")).filter(exists);
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

function exists(path: string): boolean {
  try {
    return Deno.statSync(path).isFile;
  } catch {
    return false;
  }
}

/** The functions among exported names, with what their comments say. */
export function functionsAmong(symbols: readonly DocSymbol[]): readonly DocFunction[] {
  return symbols.flatMap(({ name, declarations }) => {
    const found = declarations.find(({ kind }) => kind === "function");
    if (found === undefined) return [];
    const tags = found.jsDoc?.tags ?? [];
    const params = (found.def.params as readonly DocParam[]).map((param, i) => {
      const { tsType, name: own } = param.left ?? param;
      const said = tags.filter(({ kind }) => kind === "param");
      const { doc } = said.find((tag) => tag.name === own) ?? said[i] ?? {};
      return { tsType, comment: `${own ?? ""}: ${doc?.trim() ?? ""}` };
    });
    const examples = tags.filter(({ kind }) => kind === "example")
      .flatMap(({ doc = "" }) =>
        [...doc.matchAll(/```ts\n([\s\S]*?)```/g)].map(([, code]) => code!)
      );
    return [{ name, params, examples }];
  });
}

/** Properties of an interface, those it inherits included. */
export function propertiesOf(name: string, symbols: Symbols): readonly DocProperty[] {
  const def = symbols.get(name)?.declarations.find(({ kind }) => kind === "interface")?.def;
  if (def === undefined) return [];
  const inherited = (def.extends ?? []).flatMap((base: DocType) =>
    propertiesOf(base.value?.typeName ?? base.repr ?? "", symbols)
  );
  return [...inherited, ...(def.properties ?? [])];
}
