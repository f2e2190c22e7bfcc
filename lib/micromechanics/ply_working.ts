import type { Lamina } from "../materials/mod.ts";
import { type PlyRecipe, stiffnessFactorOf } from "./ply_recipe.ts";
import { formFactors } from "./form_factors.ts";

/** One step of how a ply's figures come about. */
export interface PlyWorkingStep {
  /** What is worked out, in words. */
  readonly meaning: string;
  /** The formula, as TeX. */
  readonly formula: string;
  /** The result, in SI units. */
  readonly result: {
    /** Its symbol, as TeX. */
    readonly symbol: string;
    /** The value, in `unit`. */
    readonly value: number;
    /** SI unit of the value. */
    readonly unit: string;
  };
  /** Where the formula comes from. */
  readonly source: string;
}

interface PlyFigures {
  readonly recipe: PlyRecipe;
  readonly strands: Lamina;
  readonly lamina: Lamina;
  readonly thickness: number;
}

const KAW = "Kaw, Mechanics of Composite Materials, 2nd ed. (2006), chapter 3, from memory";

/** The steps from cloth, fibre and resin to the ply, in the order in which they are taken. */
export function plyWorking(figures: PlyFigures): readonly PlyWorkingStep[] {
  return [
    ...strandSteps(figures),
    ...clothSteps(figures),
    ...strengthSteps(figures),
  ];
}

function strandSteps({ recipe, strands, thickness }: PlyFigures): PlyWorkingStep[] {
  const factors = formFactors(recipe.reinforcement);
  return [
    {
      meaning: "Thickness of the cured ply",
      formula: "t = \\frac{w}{\\rho_f V_f}",
      result: {
        symbol: "t",
        value: thickness,
        unit: "m",
      },
      source: "mass balance",
    },
    {
      meaning: "Density",
      formula: "\\rho = \\rho_f V_f + \\rho_m (1 - V_f)",
      result: {
        symbol: "\\rho",
        value: strands.density,
        unit: "kg/m³",
      },
      source: KAW,
    },
    {
      meaning: "Modulus along the strands, with the knock-down for crimp",
      formula: `E_1' = ${stiffnessFactorOf(recipe)}\\,[E_{f1} V_f + E_m (1 - V_f)]`,
      result: { symbol: "E_1'", value: strands.E1, unit: "Pa" },
      source: `${KAW}; knock-down: ${factors.source}`,
    },
    {
      meaning: "Modulus across the strands",
      formula: "E_2' = E_m \\frac{1 + 2 \\eta V_f}{1 - \\eta V_f},\\quad " +
        "\\eta = \\frac{E_{f2}/E_m - 1}{E_{f2}/E_m + 2}",
      result: { symbol: "E_2'", value: strands.E2, unit: "Pa" },
      source: `Halpin and Tsai; ${KAW}`,
    },
    {
      meaning: "Shear modulus",
      formula: "G_{12} = G_m \\frac{1 + \\eta V_f}{1 - \\eta V_f},\\quad " +
        "\\eta = \\frac{G_{f12}/G_m - 1}{G_{f12}/G_m + 1}",
      result: { symbol: "G_{12}'", value: strands.G12, unit: "Pa" },
      source: `Halpin and Tsai; ${KAW}`,
    },
  ];
}

function clothSteps({ recipe, lamina }: PlyFigures): PlyWorkingStep[] {
  if (recipe.reinforcement.form === "mat") {
    return [
      {
        meaning: "Modulus of the mat: strands in every direction of the plane",
        formula: "E = \\frac{U_1^2 - U_4^2}{U_1} \\approx \\tfrac{3}{8} E_1' + \\tfrac{5}{8} E_2'",
        result: { symbol: "E", value: lamina.E1, unit: "Pa" },
        source: "Tsai and Pagano (1968), from memory",
      },
    ];
  }
  const source = "classical lamination of crossed layers";
  const share = recipe.reinforcement.warpShare;
  return [
    {
      meaning: "Modulus along the warp: warp and weft stretched alike",
      formula: `E_1 \\approx ${share}\\,E_1' + ${round(1 - share)}\\,E_2'`,
      result: { symbol: "E_1", value: lamina.E1, unit: "Pa" },
      source,
    },
    {
      meaning: "Modulus along the weft",
      formula: `E_2 \\approx ${round(1 - share)}\\,E_1' + ${share}\\,E_2'`,
      result: { symbol: "E_2", value: lamina.E2, unit: "Pa" },
      source,
    },
  ];
}

function strengthSteps({ recipe, lamina }: PlyFigures): PlyWorkingStep[] {
  const { strengths } = lamina;
  if (strengths === undefined) return [];
  const { reinforcement } = recipe;
  const factors = formFactors(reinforcement);
  const share = reinforcement.form === "mat" ? "\\tfrac{3}{8}" : `${reinforcement.warpShare}`;
  const source = `estimate: netting of the fibres in that direction; ${factors.source}`;
  return [
    {
      meaning: "Tensile strength along 1, estimated (not below the resin's)",
      formula: `X_t = ${share}\\,V_f X_f \\times ${factors.tension}`,
      result: { symbol: "X_t", value: strengths.Xt, unit: "Pa" },
      source,
    },
    {
      meaning: "Compressive strength along 1, estimated (not below the resin's)",
      formula: `X_c = ${share}\\,V_f X_{fc} \\times ${factors.compression}`,
      result: { symbol: "X_c", value: strengths.Xc, unit: "Pa" },
      source,
    },
    {
      meaning: "Shear strength, estimated: the resin between crowded fibres",
      formula: "S = S_m \\left[1 - (\\sqrt{V_f} - V_f)(1 - G_m/G_{f12})\\right]",
      result: { symbol: "S", value: strengths.S, unit: "Pa" },
      source: "Chamis, NASA TM-83320 (1983), from memory",
    },
  ];
}

const round = (value: number): number => Math.round(value * 1e6) / 1e6;
