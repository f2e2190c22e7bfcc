/**
 * Stands in for mathjs in a page's bundle: units of the table are read, products of units such as
 * `kN/m2` are refused with the list of those that do.
 */
export function create(): { createUnit(): void; unit(): never } {
  return {
    createUnit(): void {},
    unit(): never {
      throw new Error("a page knows the units of the table only");
    },
  };
}

/** Named by the import, used by the real one. */
export const createUnitDependencies = {};
/** Named by the import, used by the real one. */
export const unitDependencies = {};
