/** Plane stress in the axes of the laminate. */
export interface LaminateStress {
  /** Normal stress along x [Pa]. */
  readonly sigmaX: number;
  /** Normal stress along y [Pa]. */
  readonly sigmaY: number;
  /** Shear stress [Pa]. */
  readonly tauXY: number;
}

/** Strain in the axes of the laminate. */
export interface LaminateStrain {
  /** Normal strain along x [1]. */
  readonly epsilonX: number;
  /** Normal strain along y [1]. */
  readonly epsilonY: number;
  /** Engineering shear strain, twice the tensor's [1]. */
  readonly gammaXY: number;
}

/** Curvature of the laminate: strain gained per height, ε(z) = ε⁰ + z κ. */
export interface Curvature {
  /** −∂²w/∂x² [1/m]. */
  readonly kappaX: number;
  /** −∂²w/∂y² [1/m]. */
  readonly kappaY: number;
  /** −2 ∂²w/∂x∂y, the engineering twist [1/m]. */
  readonly kappaXY: number;
}

/** Plane stress in the axes of a ply. */
export interface PlyStress {
  /** Normal stress along the fibres [Pa]. */
  readonly sigma1: number;
  /** Normal stress across the fibres [Pa]. */
  readonly sigma2: number;
  /** Shear stress [Pa]. */
  readonly tau12: number;
}

/** Strain in the axes of a ply. */
export interface PlyStrain {
  /** Normal strain along the fibres [1]. */
  readonly epsilon1: number;
  /** Normal strain across the fibres [1]. */
  readonly epsilon2: number;
  /** Engineering shear strain, twice the tensor's [1]. */
  readonly gamma12: number;
}

/** Forces and moments on a laminate, per width of the edge they act on. */
export interface ForcesAndMoments {
  /** Force along x on the edge facing x [N/m]. */
  readonly Nx: number;
  /** Force along y on the edge facing y [N/m]. */
  readonly Ny: number;
  /** Shear force [N/m]. */
  readonly Nxy: number;
  /** Moment of the stresses σx, ∫σx z dz: positive pulls on the bag side (+z) [N]. */
  readonly Mx: number;
  /** Moment of the stresses σy, ∫σy z dz [N]. */
  readonly My: number;
  /** Twisting moment, ∫τxy z dz [N]. */
  readonly Mxy: number;
}
