/**
 * Inputs for any public function, made from its documented types: mostly such as can be meant, by
 * the unit in the comment, and now and then one that cannot.
 *
 * @module
 */
import fc, { type Arbitrary } from "fast-check";

/** A type as `deno doc --json` gives it. */
export interface DocType {
  readonly kind: string;
  readonly repr?: string;
  // deno-lint-ignore no-explicit-any
  readonly value: any;
}

interface DocProperty {
  readonly name: string;
  readonly optional?: boolean;
  readonly tsType?: DocType;
  readonly jsDoc?: { readonly doc?: string };
}

/** What is documented under a name. */
export interface DocSymbol {
  readonly name: string;
  readonly declarations: readonly {
    readonly kind: string;
    // deno-lint-ignore no-explicit-any
    readonly def?: any;
  }[];
}

/** Every documented name. */
export type Symbols = ReadonlyMap<string, DocSymbol>;

/** Values that no quantity has. */
const HOSTILE: Arbitrary<unknown> = fc.constantFrom<unknown[]>(
  NaN,
  Infinity,
  -Infinity,
  -1,
  0,
  -0,
  5e-324,
  1e308,
  -1e308,
  1e-160,
  2 ** 53,
  0.5,
  "5",
  "",
  undefined,
  null,
  true,
  [],
  [NaN],
  {},
  -0.1,
  1e9,
);

/** Sizes that occur, by the unit in brackets at the end of a comment. */
const BY_UNIT: Readonly<Record<string, readonly [number, number]>> = {
  "Pa": [1e5, 2e11],
  "m": [1e-4, 2],
  "m²": [1e-4, 2],
  "m³": [1e-6, 1e-2],
  "kg": [1e-3, 5],
  "kg/m³": [20, 2700],
  "kg/m²": [0.05, 5],
  "kg/m": [1e-3, 1],
  "N": [1, 2000],
  "N/m": [1, 1e5],
  "N·m": [1, 1e3],
  "N·m²": [1, 1e3],
  "deg": [-180, 180],
  "K": [-100, 400],
  "1/K": [-1e-6, 1e-4],
  "s": [1, 1e5],
  "m/N": [1e-7, 1e-3],
  "1/m": [-1, 1],
  "J": [1e-3, 10],
};

function numberFor(comment: string): Arbitrary<unknown> {
  const unit = comment.match(/\[([^\]]+)\][^[\]]*$/)?.[1];
  const range = unit === undefined ? undefined : BY_UNIT[unit];
  if (range !== undefined) return fc.double({ min: range[0], max: range[1], noNaN: true });
  return fc.oneof(
    { weight: 3, arbitrary: fc.double({ min: 0, max: 1, noNaN: true }) },
    { weight: 2, arbitrary: fc.integer({ min: 0, max: 8 }) },
    { weight: 1, arbitrary: fc.double({ min: -100, max: 100, noNaN: true }) },
  );
}

const TEXT = fc.constantFrom(
  "E-glass",
  "[0/90]s",
  "200 g/m^2",
  "12 mm",
  "mm",
  "kg/m3",
  "a\nb,c",
  "=1+2",
  "<script>",
  "__proto__",
);

/** Deeper than any of our types nests. */
const DEEPEST = 7;

/** Makes inputs for one type. */
export function inputsFor(
  type: DocType | undefined,
  place: { readonly comment: string; readonly symbols: Symbols; readonly depth?: number },
): Arbitrary<unknown> {
  const { depth = 0 } = place;
  const sound = depth > DEEPEST ? fc.constant(undefined) : soundFor(type, { ...place, depth });
  // A text is not computed with: a wrong one is some other text, or none.
  const hostile = isText(type) ? fc.constantFrom("", "no such word", undefined, null) : HOSTILE;
  return fc.oneof({ weight: 24, arbitrary: sound }, { weight: 1, arbitrary: hostile });
}

function isText(type: DocType | undefined): boolean {
  return type?.repr === "string" || type?.kind === "literal" ||
    (type?.kind === "union" && type.value.every((part: DocType) => isText(part)));
}

interface Place {
  readonly comment: string;
  readonly symbols: Symbols;
  readonly depth: number;
}

function soundFor(type: DocType | undefined, place: Place): Arbitrary<unknown> {
  if (type === undefined) return HOSTILE;
  const deeper = { ...place, depth: place.depth + 1 };
  switch (type.kind) {
    case "keyword":
      if (type.repr === "number") return numberFor(place.comment);
      if (type.repr === "string") return TEXT;
      if (type.repr === "boolean") return fc.boolean();
      return fc.constant(undefined);
    case "literal":
      return fc.constant(type.value[type.value.kind] ?? type.repr);
    case "union":
      return fc.oneof(...type.value.map((part: DocType) => soundFor(part, place)));
    case "array":
      return fc.array(inputsFor(type.value, deeper), { minLength: 1, maxLength: 6 });
    case "tuple":
      return fc.tuple(...type.value.map((part: DocType) => inputsFor(part, deeper)));
    case "parenthesized":
    case "rest":
    case "optional":
      return soundFor(type.value, place);
    case "typeOperator":
      return soundFor(type.value.tsType, place);
    case "typeLiteral":
      return recordFor(type.value.properties ?? [], deeper);
    case "fnOrConstructor":
      return fc.constantFrom<unknown[]>(() => 0.5, (x: unknown) => x, () => ({ a: 1 }));
    case "typeRef":
      return referredTo(type, place);
    default:
      return HOSTILE;
  }
}

function recordFor(properties: readonly DocProperty[], place: Place): Arbitrary<unknown> {
  const required = properties.filter(({ optional }) => optional !== true).map(({ name }) => name);
  return fc.record(
    Object.fromEntries(properties.map(({ name, tsType, jsDoc }) => [
      name,
      inputsFor(tsType, { ...place, comment: jsDoc?.doc?.trim() ?? "" }),
    ])),
    { requiredKeys: required },
  );
}

const LISTS = ["ReadonlyArray", "Array", "ArrayLike", "Iterable"];
const TYPED = ["Float64Array", "Uint32Array", "Int32Array", "Uint8Array"];

function referredTo(type: DocType, place: Place): Arbitrary<unknown> {
  const { typeName, typeParams = [] } = type.value;
  const deeper = { ...place, depth: place.depth + 1 };
  if (typeName === "Readonly" || typeName === "Partial") return soundFor(typeParams[0], place);
  if (typeName === "Record") {
    return fc.dictionary(
      fc.constantFrom("a", "b", "x"),
      inputsFor(typeParams[1], deeper),
      { minKeys: 1, maxKeys: 3, noNullPrototype: true },
    );
  }
  if (typeName === "Pick" || typeName === "Omit") return picked(typeName, typeParams, place);
  if (LISTS.includes(typeName)) {
    return fc.array(inputsFor(typeParams[0], deeper), { minLength: 1, maxLength: 9 });
  }
  if (TYPED.includes(typeName)) {
    return fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { maxLength: 9 })
      .map((values) => Float64Array.from(values));
  }
  if (typeName === "AbortSignal") return fc.constant(undefined);
  const symbol = place.symbols.get(typeName);
  for (const { kind, def } of symbol?.declarations ?? []) {
    if (kind === "interface") return recordFor(propertiesOf(typeName, place.symbols), deeper);
    if (kind === "typeAlias") return soundFor(def.tsType, deeper);
  }
  return HOSTILE;
}

function picked(
  how: "Pick" | "Omit",
  [of, names]: readonly DocType[],
  place: Place,
): Arbitrary<unknown> {
  const properties = propertiesOf(of?.value?.typeName ?? "", place.symbols);
  const listed = [names?.kind === "union" ? names.value : names].flat()
    .map((part) => part?.value?.string);
  return recordFor(
    properties.filter(({ name }) => listed.includes(name) === (how === "Pick")),
    { ...place, depth: place.depth + 1 },
  );
}

/** Properties of an interface, those it inherits included. */
function propertiesOf(name: string, symbols: Symbols): readonly DocProperty[] {
  const def = symbols.get(name)?.declarations.find(({ kind }) => kind === "interface")?.def;
  if (def === undefined) return [];
  const inherited = (def.extends ?? []).flatMap((base: DocType) =>
    propertiesOf(base.value?.typeName ?? "", symbols)
  );
  return [...inherited, ...(def.properties ?? [])];
}

/** The first number in a result that is not finite, told by its path. */
export function firstNonFinite(value: unknown, path = "result", depth = 0): string | undefined {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${value}`;
  if (typeof value !== "object" || value === null || depth > 8) return undefined;
  const entries: Iterable<readonly [unknown, unknown]> = value instanceof Map
    ? value.entries()
    : ArrayBuffer.isView(value)
    ? Array.from(value as unknown as ArrayLike<number>).entries()
    : Object.entries(value);
  for (const [key, entry] of entries) {
    const found = firstNonFinite(entry, `${path}.${String(key)}`, depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}
