import type { Core, Fibre } from "../materials/mod.ts";

/**
 * A fibre with another modulus along it. An isotropic fibre (glass, basalt) changes as a whole;
 * of carbon, aramid and flax only the modulus along the fibre is moved.
 */
export function withModulus(fibre: Fibre, E1: number): Fibre {
  if (fibre.E1 !== fibre.E2) return { ...fibre, E1 };
  const ratio = E1 / fibre.E1;
  return {
    ...fibre,
    E1,
    E2: fibre.E2 * ratio,
    G12: fibre.G12 * ratio,
    G23: fibre.G23 * ratio,
  };
}

/** A core with another shear modulus along L; that along W goes with it. */
export function withShearModulus(core: Core, shearModulusL: number): Core {
  return {
    ...core,
    shearModulusL,
    shearModulusW: core.shearModulusW * shearModulusL / core.shearModulusL,
  };
}
