import type { PanelStiffness } from "../sandwich/mod.ts";
import { inverse3 } from "../numeric/mod.ts";

/** What a strip between two bearers has against buckling, for each metre of width. */
export interface StripRigidity {
  /** Flexural rigidity, the strip free to curl across [N·m]. */
  readonly flexural: number;
  /** One over the shear stiffness; 0 if rigid [m/N]. */
  readonly shearCompliance: number;
  /** Push at which it buckles, free to turn at its bearers [N/m]. */
  readonly criticalPush: number;
}

/** By how much a push makes moment and shear force grow [1]. */
export interface Growth {
  /** Largest moment over that without a push [1]. */
  readonly moment: number;
  /** Shear force at the bearers over that without a push [1]. */
  readonly shear: number;
}

/** Rigidities of a strip of a panel, and its Euler load lowered by shear. */
export function stripRigidity(stiffness: PanelStiffness, span: number): StripRigidity {
  const { D11, D12, D16, D22, D26, D66, shear } = stiffness;
  const [d11 = NaN] = inverse3([D11, D12, D16, D12, D22, D26, D16, D26, D66]);
  const shearCompliance = shear === "rigid"
    ? 0
    : shear.S44 / (shear.S44 * shear.S55 - shear.S45 * shear.S45);
  return {
    flexural: 1 / d11,
    shearCompliance,
    criticalPush: 1 / (span * span * d11 / Math.PI ** 2 + shearCompliance),
  };
}

/**
 * Growth under a push below the critical one: of a force in the middle, of a pressure, and of a
 * moment along the whole span, whose shear force comes from the push alone.
 *
 * M'' + k² M = −p/(1 − N/S) with k² = N/(D (1 − N/S)); u = k L/2.
 */
export function growthUnderPush(
  push: number,
  { flexural, shearCompliance }: StripRigidity,
  span: number,
): {
  readonly force: Growth;
  readonly pressure: Growth;
  readonly moment: { readonly moment: number; readonly shearPerMoment: number };
} {
  const still = { moment: 1, shear: 1 };
  if (!(push > 0)) {
    return { force: still, pressure: still, moment: { moment: 1, shearPerMoment: 0 } };
  }
  const lean = 1 - push * shearCompliance;
  const u = span / 2 * Math.sqrt(push / (flexural * lean));
  const secant = 1 / Math.cos(u);
  const tangent = Math.tan(u) / u;
  return {
    force: { moment: tangent / lean, shear: secant / lean },
    pressure: {
      moment: (2 * Math.sin(u / 2) / u) ** 2 * secant / lean,
      shear: tangent / lean,
    },
    moment: { moment: secant, shearPerMoment: 2 * u / span * Math.tan(u) },
  };
}
