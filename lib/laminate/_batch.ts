/** What comes before and after the batch kernel: checks, constants, room for the results. */
import { checksFor } from "../check/mod.ts";
import type { BatchOptions, BatchResult, LaminateBatch } from "./batch.ts";
import { kernelConstants } from "./_batch_constants.ts";
import { type KernelInput, LAMINA } from "./_batch_layout.ts";

const check = checksFor("analyse the batch");

/** A batch that has passed its checks. */
export interface PreparedBatch {
  readonly input: KernelInput;
  /** Laminates. */
  readonly count: number;
  readonly keepPlyStress: boolean;
}

/** Checks a batch and computes the constants of its laminas. */
export function prepareBatch(batch: LaminateBatch, options: BatchOptions): PreparedBatch {
  check.object("batch", batch);
  check.object("options", options);
  const { laminas, plyCount, lamina, thickness, angleDeg, loads } = batch;
  check.list("laminas", laminas);
  check.count("number of plies", plyCount, 1);
  check.within("number of plies", plyCount, { min: 1, max: 32767 });
  const change = {
    temperature: check.finite("temperature change", batch.temperatureChange ?? 0, "K"),
    moisture: check.finite("moisture change", batch.moistureChange ?? 0),
  };
  const constants = kernelConstants(check, laminas, change);
  const count = checkArrays(batch);
  checkPlies(batch);
  for (let i = 0; i < loads.length; i++) check.finite(`loads entry ${i}`, loads[i]!);
  const hasFreeStrain = constants.some((value, i) =>
    i % LAMINA.length >= LAMINA.freeMean && value !== 0
  );
  return {
    input: {
      ...{ plyCount, constants, lamina, thickness, angleDeg, loads, hasFreeStrain },
      holdsResidual: options.scaleResidual !== true,
    },
    count,
    keepPlyStress: options.keepPlyStress === true,
  };
}

/** Refuses arrays of the wrong type or length; returns the number of laminates. */
function checkArrays({ plyCount, lamina, thickness, angleDeg, loads }: LaminateBatch): number {
  if (!(lamina instanceof Uint16Array)) check.refuse("lamina", lamina, "must be a Uint16Array");
  for (const [name, array] of Object.entries({ thickness, angleDeg, loads })) {
    if (!(array instanceof Float64Array)) check.refuse(name, array, "must be a Float64Array");
  }
  const plies = thickness.length;
  const count = plies / plyCount;
  check.count("number of laminates (plies over plies of each)", count, 1);
  for (const [name, array] of Object.entries({ lamina, angleDeg })) {
    if (array.length !== plies) {
      check.refuse(`length of ${name}`, array.length, `must be that of thickness, ${plies}`);
    }
  }
  if (loads.length !== 6 && loads.length !== 6 * count) {
    check.refuse("length of loads", loads.length, `must be 6, or ${6 * count}: six a laminate`);
  }
  return count;
}

/** Plain comparisons for the many plies; a check with its message only for the one that fails. */
function checkPlies({ laminas, plyCount, lamina, thickness, angleDeg }: LaminateBatch): void {
  const kinds = laminas.length;
  for (let start = 0; start < thickness.length; start += plyCount) {
    let h = 0;
    for (let i = start; i < start + plyCount; i++) {
      const t = thickness[i]!;
      const angle = angleDeg[i]!;
      h += t;
      if (t >= 0 && angle >= -360 && angle <= 360 && lamina[i]! < kinds) continue;
      const ply = `laminate ${start / plyCount + 1} ply ${i - start + 1}`;
      check.nonNegative(`${ply} thickness`, t, "m");
      check.within(`${ply} angle`, angle, { min: -360, max: 360, unit: "°" });
      check.within(`${ply} lamina`, lamina[i]!, { min: 0, max: kinds - 1 });
    }
    check.positive(`laminate ${start / plyCount + 1} thickness`, h, "m");
  }
}

/** Room for the results, in shared memory if several threads write to it. */
export function makeOutput(
  { input: { plyCount }, count, keepPlyStress }: PreparedBatch,
  makeBuffer: (bytes: number) => ArrayBufferLike = (bytes) => new ArrayBuffer(bytes),
): BatchResult {
  const plyStressCount = keepPlyStress ? 6 * count * plyCount : 0;
  return {
    utilisation: new Float64Array(makeBuffer(8 * count)),
    criticalPly: new Int16Array(makeBuffer(2 * count)),
    criticalFace: new Uint8Array(makeBuffer(count)),
    strains: new Float64Array(makeBuffer(8 * 6 * count)),
    membraneEx: new Float64Array(makeBuffer(8 * count)),
    plyStress: new Float64Array(makeBuffer(8 * plyStressCount)),
  };
}

/**
 * Refuses results beyond the range of numbers, for example of a laminate a kilometre thick. The
 * largest number passes: it stands for a laminate that can bear no load.
 */
export function finishBatch(output: BatchResult): BatchResult {
  const { utilisation, strains, membraneEx } = output;
  for (let i = 0; i < utilisation.length; i++) {
    let size = 0;
    for (let j = 6 * i; j < 6 * i + 6; j++) size += Math.abs(strains[j]!);
    if (
      utilisation[i]! < Infinity && size < Infinity && membraneEx[i]! > 0 &&
      membraneEx[i]! < Infinity
    ) continue;
    check.refuse(
      `laminate ${i + 1}`,
      "not solvable",
      "must have stiffnesses, thicknesses and loads that differ by fewer powers of ten",
    );
  }
  return output;
}
