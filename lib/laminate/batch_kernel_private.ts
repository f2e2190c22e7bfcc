/**
 * The batch engine's loop over laminates. A hot kernel: every index is inside its array by
 * construction (the door in `batch.ts` has checked the lengths), hence the `!`; the scratch space
 * is made once a call, so that the loop allocates nothing.
 */
import { type KernelInput, type KernelOutput, PLACE, PLY } from "./batch_layout_private.ts";
import { stressPlies, sumPlies } from "./batch_plies_private.ts";
import { rateHeld, rateScaled } from "./batch_rate_private.ts";
import { invertStiffness, strainsUnder } from "./batch_solve_private.ts";

/** Analyses the laminates from `start` up to, not including, `end`. */
export function runKernel(
  input: KernelInput,
  output: KernelOutput,
  { start, end }: { readonly start: number; readonly end: number },
): void {
  const { plyCount, loads } = input;
  const scratch = new Float64Array(PLACE.plies + PLY.length * plyCount);
  const holds = input.hasFreeStrain && input.holdsResidual;
  const loadStride = loads.length === 6 ? 0 : 6;
  for (let i = start; i < end; i++) {
    const thickness = sumPlies(input, scratch, i);
    const a11 = invertStiffness(scratch);
    output.membraneEx[i] = 1 / (thickness * a11);
    for (let j = 0; j < 6; j++) {
      scratch[PLACE.forces + j] = loads[loadStride * i + j]! +
        (holds ? 0 : scratch[PLACE.freeForces + j]!);
    }
    strainsUnder(scratch, PLACE.forces, PLACE.strains);
    if (holds) {
      strainsUnder(scratch, PLACE.freeForces, PLACE.freeStrains);
      stressPlies(input, scratch, i, 0, 0);
      stressPlies(input, scratch, i, 6, 1);
      rateHeld(input, output, scratch, i);
    } else {
      stressPlies(input, scratch, i, 0, 1);
      rateScaled(input, output, scratch, i);
    }
    keep(output, scratch, i, plyCount, holds);
  }
}

/** Copies strains, and stresses if they are kept, out of the scratch space. */
function keep(
  { strains, plyStress }: KernelOutput,
  scratch: Float64Array,
  laminate: number,
  plyCount: number,
  holds: boolean,
): void {
  for (let j = 0; j < 6; j++) {
    strains[6 * laminate + j] = scratch[PLACE.strains + j]! +
      (holds ? scratch[PLACE.freeStrains + j]! : 0);
  }
  if (plyStress.length === 0) return;
  for (let k = 0; k < plyCount; k++) {
    const ply = PLACE.plies + PLY.length * k;
    for (let j = 0; j < 6; j++) {
      plyStress[6 * (laminate * plyCount + k) + j] = scratch[ply + PLY.stress + j]! +
        (holds ? scratch[ply + PLY.freeStress + j]! : 0);
    }
  }
}
