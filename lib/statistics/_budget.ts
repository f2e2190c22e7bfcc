import type { Checks } from "../check/mod.ts";
import { correlated } from "./_correlation.ts";
import type { InputDerivatives } from "./_derivative.ts";
import type { BudgetLine, Propagated } from "./propagate.ts";
import type { UncertainInput } from "./uncertain.ts";
import { effectiveDof } from "./_uncertain.ts";

/** All that is known when one result's uncertainty is added up. */
export interface Gathered<K extends string> {
  readonly names: readonly K[];
  readonly inputs: Readonly<Record<K, UncertainInput>>;
  readonly derivatives: readonly InputDerivatives[];
  readonly correlation: Float64Array | undefined;
  /** Which of the formula's results this is. */
  readonly result: number;
  readonly value: number;
}

/** Adds up one result: its uncertainty, its budget and its notes. */
export function gather<K extends string>(check: Checks, given: Gathered<K>): Propagated<K> {
  const { names, inputs, derivatives, correlation, result, value } = given;
  const sensitivities = derivatives.map((d) => d.first[result]!);
  const contributions = contributionsOf(given);
  const { unit, scaled } = inUnitsOfLargest(contributions);
  const parts = scaled.map((c, i) => c * correlated(correlation, scaled, i));
  const variance = Math.max(0, parts.reduce((sum, part) => sum + part, 0));
  const u = check.result("standard uncertainty", unit * Math.sqrt(variance));
  const budget = names.map((name, i): BudgetLine<K> => ({
    name,
    value: inputs[name].value,
    u: inputs[name].u,
    sensitivity: check.result(`sensitivity to ${name}`, sensitivities[i]!),
    contribution: contributions[i]!,
    share: variance > 0 ? parts[i]! / variance : 0,
  }));
  const dof = correlation !== undefined ? undefined : effectiveDof(
    u,
    names.map((name, i) => ({ share: contributions[i]!, dof: inputs[name].dof })),
  );
  return {
    value,
    u,
    U: 2 * u,
    ...(dof === undefined ? {} : { dof }),
    sensitivity: Object.fromEntries(names.map((name, i) => [name, sensitivities[i]!])) as Record<
      K,
      number
    >,
    budget: budget.sort((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution)),
    notes: notesOn(given, u),
  };
}

/** Sensitivity times uncertainty of each input. */
export function contributionsOf<K extends string>(given: Gathered<K>): number[] {
  return given.names.map((name, i) =>
    given.derivatives[i]!.first[given.result]! * given.inputs[name].u
  );
}

/** A list in units of its largest, so that squares neither overflow nor vanish. */
export function inUnitsOfLargest(
  list: readonly number[],
): { readonly unit: number; readonly scaled: number[] } {
  const unit = list.reduce((most, c) => Math.max(most, Math.abs(c)), 0) || 1;
  return { unit, scaled: list.map((c) => c / unit) };
}

/** How far one input's curve may miss the straight line over its u, as a share of the whole u. */
const STRAIGHT_ENOUGH = 0.1;

function notesOn<K extends string>(given: Gathered<K>, u: number): string[] {
  const { names, inputs, correlation } = given;
  const notes = names.flatMap((name, i) => inputs[name].u > 0 ? notesOnInput(given, i, u) : []);
  if (correlation !== undefined && names.some((name) => inputs[name].dof !== undefined)) {
    notes.push("Inputs are correlated: no effective degrees of freedom are given.");
  }
  return notes;
}

function notesOnInput<K extends string>(given: Gathered<K>, i: number, u: number): string[] {
  const name = given.names[i]!;
  const { first, atOneU, oneSided, rough } = given.derivatives[i]!;
  const sensitivity = first[given.result]!;
  const contribution = sensitivity * given.inputs[name].u;
  const misses = atOneU.map((reading, side) =>
    reading === undefined ? undefined : Math.abs(
      reading[given.result]! - given.value - (side === 0 ? contribution : -contribution),
    )
  );
  const notes: string[] = [];
  if (sensitivity === 0) {
    notes.push(
      `First order does not see ${name}: the sensitivity to it is 0 here. Monte Carlo would show ` +
        "what it does.",
    );
  } else if (misses.some((miss) => miss !== undefined && miss > STRAIGHT_ENOUGH * u)) {
    notes.push(`The result curves in ${name} over its uncertainty: u is rough. Use Monte Carlo.`);
  }
  if (oneSided) {
    notes.push(`${name} stands at the edge of what the formula accepts: read on one side only.`);
  } else if (misses.includes(undefined)) {
    notes.push(`${name} may lie beyond what the formula accepts: its uncertainty reaches there.`);
  }
  if (rough) {
    notes.push(`The result has a kink or a jump near ${name}: its sensitivity is rough.`);
  }
  return notes;
}
