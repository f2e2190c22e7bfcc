import { assert, assertEquals, assertThrows } from "@std/assert";
import { InputError } from "../../lib/check/mod.ts";
import { firstPlyFailure, fittingCriteria, type Stack } from "../../lib/laminate/mod.ts";
import { GLASS, GRAPHITE_EPOXY, HONEYCOMB } from "./laminas.ts";

const ply = { thickness: 1e-3, angleDeg: 0 };
const cloth = { ...GLASS, name: "cloth", E2: GLASS.E1 };
const misfits = (stack: Stack): string =>
  fittingCriteria(stack).filter(({ misfit }) => misfit !== null).map(({ criterion }) => criterion)
    .join();

Deno.test("Hashin and Puck fit plies of one direction, and no stack with a cloth", () => {
  assertEquals(misfits([{ ...ply, lamina: GLASS }, { ...ply, lamina: GRAPHITE_EPOXY }]), "");
  assertEquals(misfits([{ ...ply, lamina: GLASS }, { ...ply, lamina: cloth }]), "Hashin,Puck");
  // A core has no strengths and is not judged.
  assertEquals(misfits([{ ...ply, lamina: GLASS }, { ...ply, lamina: HONEYCOMB }]), "");
});

Deno.test("Puck does not fit where its slope is too steep for the strengths, which it would refuse", () => {
  const weak = { ...GLASS, strengths: { ...GLASS.strengths!, S: 10e6 } };
  const stack = [{ ...ply, lamina: weak }];
  assertEquals(misfits(stack), "Puck");
  assert(fittingCriteria(stack).at(-1)!.misfit!.includes("slope"));
  const puck = () => firstPlyFailure(stack, { Nx: 1 }, { criterion: "Puck" });
  assertThrows(puck, InputError, "slope");
});

Deno.test("an empty stack and slopes that are none are refused", () => {
  assertThrows(() => fittingCriteria([]), InputError, "stack");
  const stack = [{ ...ply, lamina: GLASS }];
  assertThrows(() => fittingCriteria(stack, null as never), InputError, "slopes");
});
