/**
 * Inputs for any public function that can be meant, made from its documented types and from the
 * units in its comments.
 *
 * @module
 */
import fc, { type Arbitrary } from "fast-check";
import { type DocProperty, type DocType, propertiesOf, type Symbols } from "./_doc.ts";

/** Figures that occur, by what the comment says and the unit at its end; the first that fits. */
const FIGURES: readonly (readonly [RegExp, number, number])[] = [
  [/\[Pa\]$/, 1e6, 1e9],
  [/(modulus|stiffness|E1|E2|G12).*\[Pa\]$/i, 1e6, 2e11],
  [/(thickness|radius|diameter|deflection|gap|depth).*\[m\]$/i, 1e-4, 2e-2],
  [/\[m\]$/, 5e-3, 2],
  [/\[m²\]$/, 1e-4, 2],
  [/\[m³\]$/, 1e-6, 1e-2],
  [/\[kg\]$/, 1e-2, 5],
  [/density.*\[kg\/m³\]$/i, 40, 2700],
  [/\[kg\/m³\]$/, 40, 2700],
  [/\[kg\/m²\]$/, 0.05, 2],
  [/\[N\]$/, 1, 2000],
  [/\[N\/m\]$/, 1, 1e5],
  [/\[N·m\]$/, 1, 1e3],
  [/\[N·m²\]$/, 1, 1e3],
  [/\[deg\]$/, -90, 90],
  [/\[K\]$/, 280, 350],
  [/\[1\/K\]$/, -1e-6, 1e-4],
  [/\[s\]$/, 60, 1e5],
  [/\[m\/N\]$/, 1e-7, 1e-3],
  [/\[1\/m\]$/, -1, 1],
  [/\[J\]$/, 0.1, 10],
  [/poisson/i, 0.05, 0.45],
  [/(share|fraction|probability|confidence|level|coverage)/i, 0.05, 0.95],
  [/(correlation)/i, -0.9, 0.9],
  [/(factor|ratio)/i, 0.5, 3],
];
const COUNTED = /(how many|number of|count|freedom|seed|order|index|plies|size)/i;

function figureFor(comment: string): Arbitrary<unknown> {
  const said = comment.trim().replace(/\.$/, "");
  const unit = said.match(/\[[^\]]+\][^[\]]*$/)?.[0].match(/\[[^\]]+\]/)?.[0] ?? "";
  if (COUNTED.test(said)) return fc.integer({ min: 1, max: 12 });
  const found = FIGURES.find(([pattern]) => pattern.test(`${said} ${unit}`));
  if (found !== undefined) return fc.double({ min: found[1], max: found[2], noNaN: true });
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

/** Where a type stands. */
export interface Place {
  /** What is said of it. */
  readonly comment: string;
  /** Every documented name. */
  readonly symbols: Symbols;
  /** How deep it stands. */
  readonly depth?: number;
  /** What stands for the type parameters of a generic type. */
  readonly bound?: ReadonlyMap<string, DocType>;
}

const NOTHING = fc.constant(undefined);

/** Makes inputs for one type. */
export function inputsFor(type: DocType | undefined, place: Place): Arbitrary<unknown> {
  const { depth = 0 } = place;
  if (type === undefined || depth > DEEPEST) return NOTHING;
  const deeper = { ...place, depth: depth + 1 };
  switch (type.kind) {
    case "keyword":
      if (type.repr === "number") return figureFor(place.comment);
      if (type.repr === "string") return TEXT;
      if (type.repr === "boolean") return fc.boolean();
      return NOTHING;
    case "literal":
      return fc.constant(type.value[type.value.kind] ?? type.repr);
    case "union":
      return fc.oneof(...type.value.map((part: DocType) => inputsFor(part, place)));
    case "intersection":
      return fc.tuple(...type.value.map((part: DocType) => inputsFor(part, deeper)))
        .map((parts) => Object.assign({}, ...parts));
    case "array":
      return fc.array(inputsFor(type.value, deeper), { minLength: 1, maxLength: 6 });
    case "tuple":
      return fc.tuple(...type.value.map((part: DocType) => inputsFor(part, deeper)));
    case "parenthesized":
    case "rest":
    case "optional":
      return inputsFor(type.value, place);
    case "typeOperator":
      return inputsFor(type.value.tsType, place);
    case "typeLiteral":
      return recordFor(type.value.properties ?? [], deeper);
    case "fnOrConstructor":
      return fc.constantFrom<unknown[]>(() => 0.5, (x: unknown) => x, () => ({ a: 1 }));
    case "typeRef":
      return referredTo(type, place);
    default:
      return NOTHING;
  }
}

function recordFor(properties: readonly DocProperty[], place: Place): Arbitrary<unknown> {
  const required = properties.filter(({ optional }) => optional !== true).map(({ name }) => name);
  return fc.record(
    Object.fromEntries(properties.map(({ name, tsType, jsDoc }) => [
      name,
      inputsFor(tsType, { ...place, comment: `${name}: ${jsDoc?.doc?.trim() ?? ""}` }),
    ])),
    { requiredKeys: required },
  );
}

const LISTS = ["ReadonlyArray", "Array", "ArrayLike", "Iterable"];
const TYPED = ["Float64Array", "Uint32Array", "Int32Array", "Uint8Array"];

function referredTo(type: DocType, place: Place): Arbitrary<unknown> {
  const { typeName, typeParams = [] } = type.value;
  const deeper = { ...place, depth: (place.depth ?? 0) + 1 };
  if (["Readonly", "Partial", "NoInfer"].includes(typeName)) return inputsFor(typeParams[0], place);
  if (typeName === "Record") {
    return fc.dictionary(
      fc.constantFrom("a", "b", "x"),
      inputsFor(typeParams[1], deeper),
      { minKeys: 1, maxKeys: 3, noNullPrototype: true },
    );
  }
  if (typeName === "Pick" || typeName === "Omit") return picked(typeName, typeParams, place);
  if (LISTS.includes(typeName)) {
    return fc.array(inputsFor(typeParams[0], deeper), { minLength: 3, maxLength: 9 });
  }
  if (TYPED.includes(typeName)) {
    return fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { maxLength: 9 })
      .map((values) => Float64Array.from(values));
  }
  const bound = place.bound?.get(typeName);
  if (bound !== undefined && bound !== type) return inputsFor(bound, deeper);
  const symbol = place.symbols.get(typeName);
  for (const { kind, def } of symbol?.declarations ?? []) {
    const names = (def?.typeParams ?? []).map(({ name }: { name: string }) => name);
    const inside = {
      ...deeper,
      bound: new Map(names.map((name: string, i: number) => [name, typeParams[i]])),
    } as Place;
    if (kind === "interface") return recordFor(propertiesOf(typeName, place.symbols), inside);
    if (kind === "typeAlias") return inputsFor(def.tsType, inside);
  }
  return NOTHING;
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
    { ...place, depth: (place.depth ?? 0) + 1 },
  );
}
