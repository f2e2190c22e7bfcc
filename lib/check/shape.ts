import type { Checks } from "./checks.ts";

/** Shapes of fields by name; a name that ends in `?` may be left out. */
export interface Fields {
  /** What the field of that name must be. */
  readonly [name: string]: Shape;
}

/** What a plain value must be: a "text" is not blank, "words" may be. */
export type Kind =
  | "text"
  | "words"
  | "number"
  | "positive"
  | "nonNegative"
  | "function"
  | "object";

/**
 * What a value must be: the kind of a plain one, `[shape]` for a list of such entries, `[null,
 * shape]` where nothing may stand, `{ each: shape }` for fields of any name, and fields by name, of
 * which none can be called `each`.
 */
export type Shape =
  | Kind
  | readonly [Shape]
  | readonly [null, Shape]
  | { readonly each: Shape }
  | Fields;

/** Refuses what is not of a shape, by the name of the part; `Checks.shape` is its door. */
export function checkShape<T>(
  check: Checks,
  argument: string,
  { value, shape }: { readonly value: T; readonly shape: Shape },
): T {
  if (typeof shape === "string") checkKind(check, argument, { value, kind: shape as Kind });
  else if (isList(shape)) {
    if (shape.length === 1) {
      check.list(argument, value as readonly unknown[], 0).forEach((entry, i) =>
        checkShape(check, `entry ${i + 1} of ${argument}`, { value: entry, shape: shape[0] })
      );
    } else if (value !== null) checkShape(check, argument, { value, shape: shape[1] });
  } else if (isEach(shape)) {
    for (const [name, entry] of Object.entries(check.object(argument, value) as object)) {
      checkShape(check, `${name} of ${argument}`, { value: entry, shape: shape.each });
    }
  } else checkFields(check, argument, { value, shape });
  return value;
}

function checkKind(
  check: Checks,
  argument: string,
  { value, kind }: { readonly value: unknown; readonly kind: Kind },
): void {
  if (kind === "words") {
    if (typeof value !== "string") check.refuse(argument, value, "must be a text");
  } else if (kind === "function") {
    if (typeof value !== "function") check.refuse(argument, value, "must be a function");
  } else if (kind === "text") check.text(argument, value as string);
  else if (kind === "number") check.finite(argument, value as number);
  else if (kind === "object") check.object(argument, value);
  else check[kind](argument, value as number);
}

function checkFields(
  check: Checks,
  argument: string,
  { value, shape }: { readonly value: unknown; readonly shape: Fields },
): void {
  const fields = check.object(argument, value) as Readonly<Record<string, unknown>>;
  // Whoever reads the message knows a thing by its label.
  const { label } = fields;
  const owner = typeof label === "string" && label !== "" ? label : argument;
  for (const [key, of] of Object.entries(shape)) {
    const name = key.replace("?", "");
    if (name !== key && fields[name] === undefined) continue;
    checkShape(check, `${name} of ${owner}`, { value: fields[name], shape: of });
  }
}

function isList(shape: Shape): shape is readonly [Shape] | readonly [null, Shape] {
  return Array.isArray(shape);
}

function isEach(shape: Fields | { readonly each: Shape }): shape is { readonly each: Shape } {
  return "each" in shape;
}
