import type { FilletPlan } from "../filler/mod.ts";
import type { BaggedPart } from "./bagging.ts";
import type { BatchTask } from "./batches.ts";
import type { RiskyOperation } from "./cautions.ts";
import type { CoreTask } from "./core_sheets.ts";
import type { ThreePoint } from "./cost_plan.ts";
import type { CureSheet } from "./cure.ts";
import type { RollTask } from "./cut_list.ts";
import type { ResinCoat, ResinTask } from "./resin_plan.ts";
import type { GaugeVacuum } from "./vacuum.ts";

/** A roll of cloth with the resin ratio aimed at. */
export interface DayCloth extends RollTask {
  /** Fibre mass over laminate mass aimed at [1]. */
  readonly fibreMassFraction: number;
}

/** Core with the resin that it drinks. */
export interface DayCore extends CoreTask {
  /** Faces wetted that day: 1 or 2 [1]. */
  readonly faces: number;
  /** Resin taken up by one face [kg/m²]. */
  readonly resinUptake: number;
}

/** The bag and the vacuum that it is hoped to hold. */
export interface DayBag extends BaggedPart {
  /** Gauge reading expected and pressure outside. */
  readonly vacuum: GaugeVacuum;
  /** Strength in compression of the weakest core, warm as it will be; none without core [Pa]. */
  readonly coreStrength?: number;
  /** Part of the core's area that carries: 1 if left out, less for scored or grooved sheets [1]. */
  readonly contactShare?: number;
  /** Time to bag the part until it is under vacuum; `USUAL_BAGGING` if left out [s]. */
  readonly baggingTime?: ThreePoint;
}

/** A lay-up day: what is made, with what, by a crew how fast. */
export interface DayTask {
  /** Name of the part. */
  readonly part: string;
  /** Clock time at which the first pot is begun, hours and minutes. */
  readonly start: string;
  /** Layers in words in the order in which they are laid, mould side first. */
  readonly layers: readonly string[];
  /** Cloths and their pieces. */
  readonly cloths: readonly DayCloth[];
  /** Cores and their pieces; empty without core. */
  readonly cores: readonly DayCore[];
  /** Coats and fabrics that take resin. */
  readonly coats: readonly ResinCoat[];
  /** Loss and mixing ratio of the resin. */
  readonly resin: Pick<ResinTask, "lossFraction" | "phr" | "densities">;
  /** Crew, mixing and pot life. */
  readonly crew: Omit<BatchTask, "totalMass" | "resinPerArea">;
  /** Curing times of the resin. */
  readonly cure: CureSheet;
  /** The bag; none for a part left open. */
  readonly bag?: DayBag;
  /** Fillets made that day; none if there are none. */
  readonly fillets?: FilletPlan;
  /** Other operations of the day, for their cautions. */
  readonly operations?: readonly RiskyOperation[];
}
