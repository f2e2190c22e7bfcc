/** What each way to give rests on. */

/** Ways in which a sandwich gives. */
export type SandwichFailureName =
  | "face tension"
  | "face compression"
  | "face shear"
  | "wrinkling"
  | "dimpling"
  | "crimping"
  | "core shear"
  | "core crushing"
  | "punching";

/** Source and scatter of each way to give; the scatter is common practice, no source. */
export const GROUNDS: Readonly<
  Record<SandwichFailureName, readonly [source: string, scatter: string]>
> = {
  "face tension": ["strength against M E z/D", "coupons scatter by some 5 to 10 %"],
  "face compression": ["strength against M E z/D", "some 10 %; much less where plies are wavy"],
  "face shear": ["strength in the plane against Mxy z/∫z² dz", "some 10 %, as the resin"],
  wrinkling: [
    "Hoff and Mautner (1945), 0.5 (Ef Ec Gc)^⅓; honeycomb MIL-HDBK-23A, 0.33 √(Ef Ec t/c); from " +
    "memory",
    "design factors, near the lower bound of tests; perfect faces reach nearly twice that",
  ],
  dimpling: ["MIL-HDBK-23A, 2 Ef/(1 − ν²)(t/s)²; from memory", "some 20 %; resin fillets help"],
  crimping: ["force in the plane = G d²/c; from memory", "some 10 %, as the core's modulus"],
  "core shear": ["V Q/(D b) against strength", "10 to 20 %; thick foams less than thin coupons"],
  "core crushing": [
    "face on elastic foundation, Hetényi (1946); from memory",
    "first dent; the face holds on beyond it. 10 to 20 %, as the core's strength",
  ],
  punching: [
    "force over rim of the patch times d: common practice, no source",
    "rough: 30 %",
  ],
};
