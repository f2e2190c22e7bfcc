/** The range in which a property usually lies, in the unit of the property. */
export interface Range {
  /** Lower end. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
}

/** What every row of the materials catalogue carries beside its figures. */
export interface Catalogued<Property extends string> {
  /** The name by which lay-up schedules refer to the row; a generic material, never a product. */
  readonly name: string;
  /** Where the figures come from, and whether from memory. */
  readonly source: string;
  /** Usual range of those properties for which the catalogue gives one. */
  readonly typical: Readonly<Partial<Record<Property, Range>>>;
}
