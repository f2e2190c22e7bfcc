/**
 * The hot kernel of Monte Carlo: fills columns with draws of the inputs, a chunk at a time.
 */
import type { Checks } from "../check/mod.ts";
import { type RandomGenerator, symmetricEigen } from "../numeric/mod.ts";
import { correlationMatrix } from "./_correlation.ts";
import type { Correlation } from "./propagate.ts";
import type { UncertainInput } from "./uncertain.ts";
import { LIMIT_DIVISOR } from "./_uncertain.ts";

/** Fills one column for each input. */
export type Sampler = (random: RandomGenerator, columns: readonly Float64Array[]) => void;

/** Makes the sampler of these inputs: independent ones each by its shape, correlated ones normal. */
export function samplerOf<K extends string>(
  check: Checks,
  given: {
    readonly names: readonly K[];
    readonly inputs: Readonly<Record<K, UncertainInput>>;
    readonly correlations: readonly Correlation<K>[];
  },
): Sampler {
  const { names, inputs, correlations } = given;
  const list = names.map((name) => inputs[name]);
  const matrix = correlationMatrix(check, names, correlations);
  if (matrix === undefined) {
    const fills = list.map(fillerOf);
    return (random, columns) => columns.forEach((column, i) => fills[i]!(random, column));
  }
  const joined = new Set(correlations.flatMap(({ between }) => [...between]));
  for (const name of joined) {
    const { shape = "normal", dof } = inputs[name];
    if (shape !== "normal" || dof !== undefined) {
      check.refuse(
        `shape of ${name}`,
        dof === undefined ? shape : "Student's t",
        "must be normal, without degrees of freedom, where it is correlated",
      );
    }
  }
  const fills = list.map((input, i) => joined.has(names[i]!) ? fillStandard : fillerOf(input));
  const members = names.flatMap((name, i) => (joined.has(name) ? [i] : []));
  const inputsOf = members.map((i) => list[i]!);
  const root = rootOf(members.flatMap((i) => members.map((j) => matrix[i * names.length + j]!)));
  return (random, columns) => {
    columns.forEach((column, i) => fills[i]!(random, column));
    join({ columns: members.map((i) => columns[i]!), root, inputs: inputsOf });
  };
}

type Fill = (random: RandomGenerator, column: Float64Array) => void;

const fillStandard: Fill = (random, column) => {
  random.fillNormal(column);
};

/** Draws of one independent input. */
function fillerOf({ value, u, dof, shape = "normal" }: UncertainInput): Fill {
  if (shape === "normal") {
    return dof === undefined
      ? (random, column) => {
        random.fillNormal(column);
        for (let i = 0; i < column.length; i++) column[i] = value + u * column[i]!;
      }
      : (random, column) => {
        for (let i = 0; i < column.length; i++) column[i] = value + u * studentT(random, dof);
      };
  }
  const halfWidth = u * LIMIT_DIVISOR[shape];
  return (random, column) => {
    random.fillUniform(column);
    if (shape === "rectangular") {
      for (let i = 0; i < column.length; i++) column[i] = value + halfWidth * (2 * column[i]! - 1);
    } else if (shape === "arcsine") {
      for (let i = 0; i < column.length; i++) {
        column[i] = value + halfWidth * Math.sin(Math.PI * (column[i]! - 0.5));
      }
    } else {
      for (let i = 0; i < column.length; i++) {
        column[i] = value + halfWidth * (column[i]! + random.uniform() - 1);
      }
    }
  };
}

/** Student's t: a normal number over the root of a chi-squared per degree of freedom. */
function studentT(random: RandomGenerator, dof: number): number {
  return random.normal() / Math.sqrt((2 * gamma(random, dof / 2)) / dof);
}

/** A gamma number (Marsaglia and Tsang, ACM Trans. Math. Softw. 26, 2000, from memory). */
function gamma(random: RandomGenerator, shape: number): number {
  if (shape < 1) return gamma(random, shape + 1) * random.uniform() ** (1 / shape);
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = random.normal();
    const v = (1 + c * z) ** 3;
    if (v > 0 && Math.log(random.uniform()) < 0.5 * z * z + d - d * v + d * Math.log(v)) {
      return d * v;
    }
  }
}

/** A matrix whose product with its transpose is the correlation; also where that is singular. */
function rootOf(correlation: readonly number[]): Float64Array {
  const { values, vectors } = symmetricEigen(correlation);
  const order = values.length;
  const root = new Float64Array(order * order);
  for (let i = 0; i < order; i++) {
    for (let k = 0; k < order; k++) {
      root[i * order + k] = vectors[k * order + i]! * Math.sqrt(Math.max(0, values[k]!));
    }
  }
  return root;
}

/** Turns columns of independent standard numbers into correlated draws, row by row. */
function join(
  { columns, root, inputs }: {
    readonly columns: readonly Float64Array[];
    readonly root: Float64Array;
    readonly inputs: readonly UncertainInput[];
  },
): void {
  const order = columns.length;
  const standard = new Float64Array(order);
  for (let row = 0; row < columns[0]!.length; row++) {
    for (let k = 0; k < order; k++) standard[k] = columns[k]![row]!;
    for (let i = 0; i < order; i++) {
      let sum = 0;
      for (let k = 0; k < order; k++) sum += root[i * order + k]! * standard[k]!;
      columns[i]![row] = inputs[i]!.value + inputs[i]!.u * sum;
    }
  }
}
