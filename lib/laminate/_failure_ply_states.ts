/** States of the ply faces of a stack, and where they leave the surfaces of their plies. */
import type { Stack } from "../materials/mod.ts";
import type { LaminaSurface } from "./_failure_criterion.ts";
import { type Crossing, crossing, type State, ZERO } from "./_failure_surface.ts";
import type { LaminateLoad, LaminateResponse, PlyPoint } from "./response.ts";
import { responseOf } from "./_response.ts";

/** Faces that fail within this share of the smallest ratio fail together [1]. */
export const TIED = 1e-9;

/** The two heights at which a ply is judged. */
export const FACES: readonly PlyFace[] = ["bottom", "top"];

/** A face of a ply: mould side or bag side. */
export type PlyFace = "bottom" | "top";

/** Stress and mechanical strain at the faces of a ply, in its axes. */
export type FaceStates = Readonly<
  Record<PlyFace, { readonly stress: State; readonly strain: State }>
>;

/** What the climate does to a stack that is otherwise left alone (imposed strains held at 0). */
export function residualStates(stack: Stack, load: LaminateLoad): FaceStates[] {
  const held = Object.fromEntries(
    imposedNames.filter((name) => load[name] !== undefined).map((name) => [name, 0]),
  );
  const { temperatureChange = 0, moistureChange = 0 } = load;
  return statesOf(
    responseOf(stack, held, { temperature: temperatureChange, moisture: moistureChange }),
  );
}

const imposedNames = [
  ...["epsilonX", "epsilonY", "gammaXY"] as const,
  ...["kappaX", "kappaY", "kappaXY"] as const,
] as const;

/** What the load alone does, without the climate. */
export function mechanicalStates(stack: Stack, load: LaminateLoad): FaceStates[] {
  return statesOf(responseOf(stack, load, { temperature: 0, moisture: 0 }));
}

/** States of each ply of a response. */
export function statesOf(response: LaminateResponse): FaceStates[] {
  return response.plies.map(({ bottom, top }) => ({
    bottom: pointState(bottom),
    top: pointState(top),
  }));
}

function pointState({ plyStress, mechanicalPlyStrain }: PlyPoint): FaceStates[PlyFace] {
  const { sigma1, sigma2, tau12 } = plyStress;
  const { epsilon1, epsilon2, gamma12 } = mechanicalPlyStrain;
  return { stress: [sigma1, sigma2, tau12], strain: [epsilon1, epsilon2, gamma12] };
}

/** Adds two sets of states, each times a factor. */
export function combined(
  parts: readonly (readonly [factor: number, states: readonly FaceStates[]])[],
): FaceStates[] {
  const sum = (index: number, face: PlyFace, kind: "stress" | "strain"): State => {
    const total: [number, number, number] = [0, 0, 0];
    for (const [factor, states] of parts) {
      states[index]![face][kind].forEach((value, i) => total[i]! += factor * value);
    }
    return total;
  };
  return parts[0]![1].map((_, index) => ({
    bottom: { stress: sum(index, "bottom", "stress"), strain: sum(index, "bottom", "strain") },
    top: { stress: sum(index, "top", "stress"), strain: sum(index, "top", "strain") },
  }));
}

/** Where a face fails: the load's own states grow from those that stay. */
export function faceCrossing(
  { surface, drawnIn }: Pick<LaminaSurface, "surface" | "drawnIn">,
  fixed: FaceStates[PlyFace] | null,
  growing: FaceStates[PlyFace],
): Crossing | null {
  return crossing(surface, fixed?.[drawnIn] ?? ZERO, growing[drawnIn]);
}
