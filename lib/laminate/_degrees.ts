/** Sine and cosine of one angle. */
export interface SineCosine {
  readonly sine: number;
  readonly cosine: number;
}

/**
 * Sine and cosine of an angle in degrees, exact where the trade lays plies: 0 and 1 at right
 * angles, equal at 45°, and mirrored exactly at −θ. So a cross-ply has A16 = 0, not 1e-9.
 */
export function sineCosineDeg(angleDeg: number): SineCosine {
  const turn = Math.round(angleDeg / 90);
  const rest = angleDeg - 90 * turn;
  const radians = Math.abs(rest) * Math.PI / 180;
  const sine = (Math.abs(rest) === 45 ? Math.SQRT1_2 : Math.sin(radians)) * Math.sign(rest);
  const cosine = Math.abs(rest) === 45 ? Math.SQRT1_2 : Math.cos(radians);
  switch (((turn % 4) + 4) % 4) {
    case 0:
      return { sine, cosine };
    case 1:
      return { sine: cosine, cosine: 0 - sine };
    case 2:
      return { sine: 0 - sine, cosine: -cosine };
    default:
      return { sine: -cosine, cosine: sine };
  }
}
