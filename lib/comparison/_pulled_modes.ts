/** The ways in which a pull tears a bolt out, with the core's usual and its least strength. */
import { checksFor } from "../check/mod.ts";
import { pottedInsert, pullThroughForce, washerPressure } from "../joints/mod.ts";
import type { CoreLayer, MountRecord } from "../records/mod.ts";
import type { MountMode } from "./mount_check.ts";

const check = checksFor("check the mount");

/** A core's strength in the thickness direction: usual, and the least of its kind. */
export interface CoreStrength {
  /** Middle of the catalogue [Pa]. */
  readonly usual: number;
  /** Low end of the catalogue's range; the middle where it has none [Pa]. */
  readonly least: number;
}

/** What pulls, and what holds against it. */
export interface Pulled {
  /** Pull on one bolt, with its factors [N]. */
  readonly pull: number;
  /** Cores of the lay-up. */
  readonly cores: readonly CoreLayer[];
  /** Thickness of the thinner skin [m]. */
  readonly faceThickness: number;
  /** Shear strength of the skin [Pa]. */
  readonly shear: number;
}

/** Pull-through, and what the core does under the washer or around its plug. */
export function pulledModes(mount: MountRecord, pulled: Pulled): readonly MountMode[] {
  const { pull, cores, faceThickness, shear } = pulled;
  const mode = (what: MountMode["what"], capacity: number, least = capacity): MountMode => ({
    what,
    demand: pull,
    capacity,
    reserve: check.result("reserve", capacity / pull),
    leastReserve: check.result("reserve", least / pull),
  });
  const through = mode(
    "pull-through",
    pullThroughForce({
      washerDiameter: mount.washerDiameter,
      faceThickness,
      faceShearStrength: shear,
    }),
  );
  if (cores.length === 0) return [through];
  if (mount.pottingDiameter === undefined) {
    const { usual, least } = crushStrength(cores);
    const washer = { holeDiameter: mount.holeDiameter, force: pull };
    const capacity = (coreStrength: number): number =>
      pull * washerPressure({ ...washer, coreStrength }, mount.washerDiameter).reserve;
    return [through, mode("core under the washer", capacity(usual), capacity(least))];
  }
  const { pottingDiameter } = mount;
  const { usual, least } = shearStrength(cores);
  const capacity = (coreShearStrength: number): number =>
    pottedInsert({
      pottingDiameter,
      insertDiameter: mount.holeDiameter,
      coreThickness: cores.reduce((sum, core) => sum + core.thickness, 0),
      coreShearStrength,
      // Only the mass of the plug depends on it, which is not asked for here.
      pottingDensity: 1,
    }).pullOutForce;
  return [through, mode("core around the plug", capacity(usual), capacity(least))];
}

/** Compressive strength of the weakest core. */
export function crushStrength(cores: readonly CoreLayer[]): CoreStrength {
  const of = cores.map(({ core }) => core);
  return {
    usual: Math.min(...of.map(({ compressiveStrength }) => compressiveStrength)),
    least: Math.min(
      ...of.map(({ compressiveStrength, typical }) =>
        typical.compressiveStrength?.low ?? compressiveStrength
      ),
    ),
  };
}

/** Shear strength of the weakest core in its weaker direction. */
function shearStrength(cores: readonly CoreLayer[]): CoreStrength {
  const of = cores.map(({ core }) => core);
  return {
    usual: Math.min(
      ...of.map(({ shearStrengthL, shearStrengthW }) => Math.min(shearStrengthL, shearStrengthW)),
    ),
    least: Math.min(
      ...of.map(({ shearStrengthL, shearStrengthW, typical }) =>
        Math.min(
          typical.shearStrengthL?.low ?? shearStrengthL,
          typical.shearStrengthW?.low ?? shearStrengthW,
        )
      ),
    ),
  };
}
