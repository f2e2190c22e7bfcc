import type { ReinforcementForm } from "../materials/mod.ts";
import type { Uncertain } from "../statistics/mod.ts";
import type { LayupProcess } from "./usual_bands.ts";

/** Cloth of one kind in the part. */
export interface WeighedCloth {
  /** Name of the cloth; layers of one name come off one roll and share its areal weight. */
  readonly cloth: string;
  /** Name of its fibre; cloths of one fibre share its density. */
  readonly fibre: string;
  /** Form of the cloth, for the usual band. */
  readonly form: ReinforcementForm;
  /** Dry mass per area, with the uncertainty of the roll [kg/m²]. */
  readonly arealWeight: Uncertain;
  /** Density of the fibre [kg/m³]. */
  readonly fibreDensity: Uncertain;
  /** Layers of it, both faces together; 1 if left out [1]. */
  readonly count?: number;
  /** Share of the part's area that such a layer covers; 1 if left out [1]. */
  readonly areaShare?: number;
}

/** A part on the scale, and what is known of it. */
export interface PartWeighing {
  /** Mass of the finished part, trimmed as its area is measured [kg]. */
  readonly partMass: Uncertain;
  /** Area of the part: of its cloth, trim included if it is weighed with it [m²]. */
  readonly area: Uncertain;
  /** Each kind of cloth in it. */
  readonly layers: readonly WeighedCloth[];
  /** Density of the cured resin [kg/m³]. */
  readonly resinDensity: Uncertain;
  /** Mass of the core before lay-up; none for a solid part [kg]. */
  readonly coreMass?: Uncertain;
  /** Area of the core where it is smaller than the part; that of the part if left out [m²]. */
  readonly coreArea?: Uncertain;
  /** Resin that the core took up, all its faces together, per area of the core [kg/m²]. */
  readonly coreUptake?: Uncertain;
  /** Film, peel ply, inserts, paint and the like that is on the scale too [kg]. */
  readonly otherMass?: Uncertain;
  /** Mass of all cut cloth weighed dry, if it was: it then replaces areal weight × area [kg]. */
  readonly dryClothMass?: Uncertain;
  /** Cloth trimmed off after the dry weighing and so not in the part [kg]. */
  readonly trimmedClothMass?: Uncertain;
  /** How it was laid up; by hand if left out. */
  readonly process?: LayupProcess;
  /** Fibre volume fraction aimed at; none: the middle of the usual band [1]. */
  readonly targetFibreVolumeFraction?: number;
  /** Correlation of masses weighed on one scale (a common error); 0 if left out [1]. */
  readonly scaleCorrelation?: number;
}
