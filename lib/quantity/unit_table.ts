/**
 * A unit of the trade. Its factor is kept as a product and a divisor that a double holds exactly,
 * so that 12.7 mm is the double 0.0127 and not its neighbour.
 */
export interface Unit {
  /** How it is written, in characters that any keyboard and any CSV heading has. */
  readonly symbol: string;
  /** The SI unit in which a value in this unit is held. */
  readonly si: string;
  /** A value times this, over `divide`, is in SI [1]. */
  readonly multiply: number;
  /** See `multiply` [1]. */
  readonly divide: number;
  /** Added before the factor; only temperatures with a zero of their own have one [1]. */
  readonly offset?: number;
  /** Other spellings with the same meaning and no second one. */
  readonly aliases: readonly string[];
}

type Row = readonly [symbol: string, multiply: number, divide: number, ...aliases: string[]];

/**
 * Exact factors: inch 25.4 mm and pound 0.45359237 kg (international, 1959), standard gravity
 * 9.80665 m/s², US gallon 231 in³, conventional millimetre of mercury 133.322387415 Pa (0 °C).
 * A pound-force is 8896443230521/2000000000000 N, and so on down.
 */
const rows: Readonly<Record<string, readonly Row[]>> = {
  "m": [
    ["m", 1, 1, "metre", "metres", "meter", "meters"],
    ["mm", 1, 1000, "millimetre", "millimetres", "millimeter", "millimeters"],
    ["cm", 1, 100, "centimetre", "centimetres", "centimeter", "centimeters"],
    ["um", 1, 1e6, "micron", "microns"],
    ["km", 1000, 1],
    ["in", 127, 5000, "inch", "inches", '"', "″", "”", "''"],
    ["ft", 381, 1250, "foot", "feet", "'", "′", "’"],
    ["yd", 1143, 1250, "yard", "yards"],
    ["mil", 127, 5e6, "mils", "thou"],
  ],
  "m²": [
    ["m2", 1, 1],
    ["cm2", 1, 1e4],
    ["mm2", 1, 1e6],
    ["in2", 16129, 25e6],
    ["ft2", 145161, 1562500],
    ["yd2", 1306449, 1562500],
  ],
  "m³": [
    ["m3", 1, 1],
    ["L", 1, 1000, "l", "litre", "litres", "liter", "liters"],
    ["mL", 1, 1e6, "ml", "cm3", "cc", "millilitre", "milliliter"],
    ["mm3", 1, 1e9],
    ["in3", 2048383, 125e9],
    ["ft3", 55306341, 1953125000],
    ["floz", 473176473, 16e12, "fl oz", "fl. oz", "fl.oz"],
    ["gal", 473176473, 125e9, "gallon", "gallons"],
  ],
  "kg": [
    ["kg", 1, 1, "kilogram", "kilograms"],
    ["g", 1, 1000, "gram", "grams", "gramme", "grammes"],
    ["mg", 1, 1e6],
    ["lb", 45359237, 1e8, "lbs", "lbm", "pound", "pounds"],
    ["oz", 45359237, 16e8, "ounce", "ounces"],
  ],
  "kg/m²": [
    ["kg/m2", 1, 1],
    ["g/m2", 1, 1000, "gsm"],
    ["oz/yd2", 45359237, 1337803776, "osy"],
    ["oz/ft2", 45359237, 148644864],
    ["lb/ft2", 45359237, 9290304],
  ],
  "kg/m³": [
    ["kg/m3", 1, 1],
    ["g/cm3", 1000, 1, "g/cc", "g/mL", "g/ml", "kg/L", "kg/l"],
    ["g/L", 1, 1, "g/l"],
    ["lb/ft3", 28349523125, 1769802912, "pcf"],
    ["lb/in3", 56699046250, 2048383],
    ["lb/gal", 736351250, 6145149],
  ],
  "kg/m": [
    ["kg/m", 1, 1],
    ["g/m", 1, 1000],
    ["tex", 1, 1e6],
    ["denier", 1, 9e6, "den"],
    ["oz/ft", 45359237, 487680000],
    ["lb/ft", 45359237, 30480000],
  ],
  "s": [
    ["s", 1, 1, "sec", "second", "seconds"],
    ["min", 60, 1, "minute", "minutes"],
    ["h", 3600, 1, "hr", "hour", "hours"],
    ["d", 86400, 1, "day", "days"],
  ],
  "m/s": [
    ["m/s", 1, 1],
    ["mm/s", 1, 1000],
    ["mm/min", 1, 60000],
    ["in/min", 127, 300000],
  ],
  "N": [
    ["N", 1, 1, "newton", "newtons"],
    ["kN", 1000, 1],
    ["kgf", 196133, 20000, "kp"],
    ["gf", 196133, 2e7],
    ["lbf", 8896443230521, 2e12],
    ["ozf", 8896443230521, 32e12],
  ],
  "N/m": [
    ["N/m", 1, 1],
    ["N/mm", 1000, 1],
    ["kN/m", 1000, 1],
    ["N/cm", 100, 1],
    ["kgf/mm", 9806.65, 1],
    ["lbf/in", 8896443230521, 508e8],
    ["lbf/ft", 8896443230521, 6096e8],
  ],
  "N m": [
    ["N*m", 1, 1],
    ["N*mm", 1, 1000],
    ["lbf*in", 1129848290276167, 1e16, "in*lbf"],
    ["lbf*ft", 3389544870828501, 25e14, "ft*lbf"],
  ],
  "J": [
    ["J", 1, 1, "joule", "joules"],
    ["kJ", 1000, 1],
    ["mJ", 1, 1000],
  ],
  "N m²": [
    ["N*m2", 1, 1],
    ["N*mm2", 1, 1e6],
    ["lbf*in2", 143490732865073209, 5e19],
  ],
  "m/N": [
    ["m/N", 1, 1],
    ["mm/N", 1, 1000],
    ["mm/kN", 1, 1e6, "um/N"],
    ["in/lbf", 508e8, 8896443230521],
  ],
  "1/m": [
    ["1/m", 1, 1],
    ["1/mm", 1000, 1],
    ["1/in", 5000, 127],
  ],
  "Pa": [
    ["Pa", 1, 1],
    ["kPa", 1000, 1],
    ["hPa", 100, 1],
    ["MPa", 1e6, 1, "N/mm2"],
    ["GPa", 1e9, 1],
    ["psi", 8896443230521, 1290320000, "lbf/in2"],
    ["ksi", 8896443230521, 1290320],
    ["Msi", 8896443230521000, 1290320, "msi"],
    ["psf", 8896443230521, 185806080000, "lbf/ft2"],
    ["bar", 1e5, 1],
    ["mbar", 100, 1],
    ["atm", 101325, 1],
    ["mmHg", 26664477483, 2e8, "mm Hg"],
    ["inHg", 3386388640341, 1e9, "in Hg", '"Hg', "″Hg"],
    ["torr", 20265, 152, "Torr"],
  ],
  "Pa s": [
    ["Pa*s", 1, 1],
    ["mPa*s", 1, 1000],
    ["cP", 1, 1000],
  ],
  "K": [["K", 1, 1, "kelvin"]],
  "1/K": [
    ["1/K", 1, 1],
    ["1e-6/K", 1, 1e6, "1e-6/degC", "um/m/K", "ppm/K", "ppm/degC", "10^-6/K", "×10^-6/K"],
    ["1/degC", 1, 1],
    ["1/degF", 9, 5],
    ["1e-6/degF", 9, 5e6, "uin/in/degF", "ppm/degF"],
  ],
  "deg": [["deg", 1, 1, "°", "degree", "degrees"], ["rad", 180, Math.PI]],
  "1": [
    ["1", 1, 1],
    ["%", 1, 100, "percent", "pct"],
    ["ppm", 1, 1e6],
    ["1e-6", 1, 1e6, "ustrain", "microstrain"],
    ["mm/m", 1, 1000],
  ],
};

/** Temperatures with a zero of their own: (value + offset) × multiply / divide is in kelvin. */
const temperatures: readonly Unit[] = [
  unit("K", ["degC", 1, 1, "°C", "℃", "deg C", "celsius"], 273.15),
  unit("K", ["degF", 5, 9, "°F", "℉", "deg F", "fahrenheit"], 459.67),
];

function unit(si: string, [symbol, multiply, divide, ...aliases]: Row, offset?: number): Unit {
  const plain = { symbol, si, multiply, divide, aliases: Object.freeze(aliases) };
  return Object.freeze(offset === undefined ? plain : { ...plain, offset });
}

/** Every unit that this project reads by name, one entry a unit. */
export const units: readonly Unit[] = Object.freeze([
  ...Object.entries(rows).flatMap(([si, list]) => list.map((row) => unit(si, row))),
  ...temperatures,
]);
