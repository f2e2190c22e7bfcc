/**
 * The batch engine's loop over laminates. A hot kernel: every index is inside its array by
 * construction (the door in `batch.ts` has checked the lengths), hence the `!`; the scratch space
 * is made once a call, so that the loop allocates nothing.
 */
import { type Kernel, type KernelInput, type KernelOutput, PLACE, PLY } from "./_batch_layout.ts";
import { stressPlies, sumPlies } from "./_batch_plies.ts";
import { rateHeld, rateScaled } from "./_batch_rate.ts";
import { invertStiffness, strainsUnder } from "./_batch_solve.ts";

/** Analyses the laminates from `start` up to, not including, `end`. */
export function runKernel(
  input: KernelInput,
  output: KernelOutput,
  { start, end }: { readonly start: number; readonly end: number },
): void {
  const w = new Float64Array(PLACE.plies + PLY.length * input.plyCount);
  const holds = input.hasFreeStrain && input.holdsResidual;
  const kernel: Kernel = { input, output, w, holds };
  const loadStride = input.loads.length === 6 ? 0 : 6;
  for (let i = start; i < end; i++) {
    const thickness = sumPlies(kernel, i);
    const a11 = invertStiffness(w);
    output.membraneEx[i] = 1 / (thickness * a11);
    for (let j = 0; j < 6; j++) {
      w[PLACE.forces + j] = input.loads[loadStride * i + j]! +
        (holds ? 0 : w[PLACE.freeForces + j]!);
    }
    strainsUnder(w, PLACE.forces, PLACE.strains);
    stressPlies(kernel, i, 0);
    if (holds) {
      strainsUnder(w, PLACE.freeForces, PLACE.freeStrains);
      stressPlies(kernel, i, 6);
      rateHeld(kernel, i);
    } else {
      rateScaled(kernel, i);
    }
    keep(kernel, i);
  }
}

/** Copies strains, and stresses if they are kept, out of the scratch space. */
function keep({ input, output, w, holds }: Kernel, laminate: number): void {
  const { plyCount, thickness } = input;
  const { strains, plyStress } = output;
  for (let j = 0; j < 6; j++) {
    strains[6 * laminate + j] = w[PLACE.strains + j]! + (holds ? w[PLACE.freeStrains + j]! : 0);
  }
  if (plyStress.length === 0) return;
  for (let k = 0; k < plyCount; k++) {
    if (thickness[laminate * plyCount + k]! === 0) continue;
    const ply = PLACE.plies + PLY.length * k;
    for (let j = 0; j < 6; j++) {
      plyStress[6 * (laminate * plyCount + k) + j] = w[ply + PLY.stress + j]! +
        (holds ? w[ply + PLY.freeStress + j]! : 0);
    }
  }
}
