/** What the parts of the batch kernel share: its input, its output, and where things lie. */

/** Places in a lamina's row of the table of constants. */
export const LAMINA = {
  ...{ U1: 0, U2: 1, U3: 2, U4: 3 },
  ...{ Q11: 4, Q12: 5, Q22: 6, Q66: 7 },
  ...{ F1: 8, F2: 9, F11: 10, F22: 11, F66: 12, twoF12: 13 },
  /** Mean, and half the difference, of the stresses Q α ΔT along 1 and 2. */
  ...{ freeMean: 14, freeHalf: 15 },
  length: 16,
} as const;

/** What the kernel reads. */
export interface KernelInput {
  readonly plyCount: number;
  readonly constants: Float64Array;
  readonly lamina: Uint16Array;
  /** A ply of thickness 0 is left out. */
  readonly thickness: Float64Array;
  readonly angleDeg: Float64Array;
  /** Six numbers for all laminates, or six for each. */
  readonly loads: Float64Array;
  /** Whether warmth or moisture strains any lamina; it saves time to know that none is. */
  readonly hasFreeStrain: boolean;
  /** Whether the stress that they leave is held while the load grows. */
  readonly holdsResidual: boolean;
}

/** What the kernel writes. */
export interface KernelOutput {
  readonly utilisation: Float64Array;
  readonly criticalPly: Int16Array;
  readonly criticalFace: Uint8Array;
  readonly strains: Float64Array;
  readonly membraneEx: Float64Array;
  /** Six stresses a ply (σ1, σ2, τ12 at its bottom, then at its top), or none if not kept. */
  readonly plyStress: Float64Array;
}

/** What the parts of the kernel hand to one another: made once, so that the loop allocates nothing. */
export interface Kernel {
  readonly input: KernelInput;
  readonly output: KernelOutput;
  /** Scratch space for one laminate, laid out by `PLACE` and `PLY`. */
  readonly w: Float64Array;
  /** Whether there is a stress of climate to be held while the load grows. */
  readonly holds: boolean;
}

/** Places in the scratch space of one laminate. */
export const PLACE = {
  /** A, B, D: 11, 12, 16, 22, 26, 66 of each. */
  stiffness: 0,
  /** N_T and M_T. */
  freeForces: 18,
  /** A⁻¹ (6), P = A⁻¹ B (9), D*⁻¹ (6). */
  compliance: 24,
  /** Forces to solve for, the strains under them, and those under the free strain alone. */
  ...{ forces: 45, strains: 51, freeStrains: 57 },
  /** For each ply: cos 2θ, sin 2θ, z of its bottom; its stresses; those under free strain. */
  plies: 63,
} as const;

/** Numbers a ply takes in the scratch space, and the places of its parts. */
export const PLY = { cosine: 0, sine: 1, z: 2, stress: 3, freeStress: 9, length: 15 } as const;
