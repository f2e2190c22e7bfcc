/**
 * Panels as solid bricks for the general-purpose solver CalculiX (Debian package calculix-ccx):
 * writes its input, runs it, reads the displacements. Bricks of 20 nodes, one layer or more a
 * ply, so that nothing of plate theory is assumed.
 */

/** A layer of bricks. */
export interface BrickLayer {
  /** Thickness [m]. */
  readonly thickness: number;
  /** Bricks over the thickness. */
  readonly bricks: number;
  /** E1, E2, E3, nu12, nu13, nu23, G12, G13, G23 [Pa], [1]. */
  readonly constants: readonly number[];
}

/** A block of bricks and what is done to it; load presses on the top, towards −z. */
export interface BrickPanel {
  readonly length: number;
  readonly width: number;
  readonly nx: number;
  readonly ny: number;
  readonly layers: readonly BrickLayer[];
  /** Directions (1, 2, 3) held at zero on the faces. */
  readonly held: Readonly<Partial<Record<"x0" | "x1" | "y0" | "y1", readonly number[]>>>;
  /** Pressure on the top face of a column of bricks with this middle [Pa]. */
  readonly pressure: (x: number, y: number) => number;
  /** Springs under pads, on the mean movement of the bottom's nodes in the pad. */
  readonly pads?: readonly {
    readonly x0: number;
    readonly x1: number;
    readonly y0: number;
    readonly y1: number;
    readonly stiffness: number;
  }[];
  /** Where the deflection is wanted: a corner of bricks, mean over top and bottom. */
  readonly wanted: readonly (readonly [number, number])[];
}

interface Lattice {
  readonly id: (i: number, j: number, k: number) => number;
  readonly nodes: readonly (readonly [number, number, number, number])[];
  readonly nz: number;
}

/** Corner and mid-edge nodes on a lattice of half bricks. */
function lattice({ length, width, nx, ny, layers }: BrickPanel): Lattice {
  const heights = [0];
  for (const { thickness, bricks } of layers) {
    for (let k = 0; k < bricks; k++) {
      heights.push(heights[heights.length - 1]! + thickness / bricks);
    }
  }
  const nz = heights.length - 1;
  const ids = new Map<number, number>();
  const nodes: (readonly [number, number, number, number])[] = [];
  const key = (i: number, j: number, k: number): number =>
    (i * (2 * ny + 1) + j) * (2 * nz + 1) + k;
  for (let i = 0; i <= 2 * nx; i++) {
    for (let j = 0; j <= 2 * ny; j++) {
      for (let k = 0; k <= 2 * nz; k++) {
        if (i % 2 + j % 2 + k % 2 > 1) continue;
        const z = k % 2 === 0
          ? heights[k / 2]!
          : (heights[(k - 1) / 2]! + heights[(k + 1) / 2]!) / 2;
        ids.set(key(i, j, k), nodes.length + 1);
        nodes.push([nodes.length + 1, i / (2 * nx) * length, j / (2 * ny) * width, z]);
      }
    }
  }
  return { id: (i, j, k) => ids.get(key(i, j, k))!, nodes, nz };
}

/** Offsets of a 20-node brick's nodes on the lattice, in the solver's order. */
const BRICK: readonly (readonly [number, number, number])[] = [
  [0, 0, 0],
  [2, 0, 0],
  [2, 2, 0],
  [0, 2, 0],
  [0, 0, 2],
  [2, 0, 2],
  [2, 2, 2],
  [0, 2, 2],
  [1, 0, 0],
  [2, 1, 0],
  [1, 2, 0],
  [0, 1, 0],
  [1, 0, 2],
  [2, 1, 2],
  [1, 2, 2],
  [0, 1, 2],
  [0, 0, 1],
  [2, 0, 1],
  [2, 2, 1],
  [0, 2, 1],
];

/** The solver's input. */
export function brickInput(panel: BrickPanel): string {
  const { nx, ny, layers, held, pads = [] } = panel;
  const { id, nodes, nz } = lattice(panel);
  const lines = ["*NODE, NSET=ALL", ...nodes.map((node) => node.join(", "))];
  const loads: string[] = [];
  let element = 0;
  let level = 0;
  layers.forEach(({ bricks }, layer) => {
    lines.push(`*ELEMENT, TYPE=C3D20R, ELSET=LAYER${layer}`);
    for (let k = level; k < level + bricks; k++) {
      for (let i = 0; i < nx; i++) {
        for (let j = 0; j < ny; j++) {
          element++;
          const ids = BRICK.map(([a, b, c]) => id(2 * i + a, 2 * j + b, 2 * k + c));
          lines.push(`${element}, ${ids.slice(0, 15).join(", ")},`, ids.slice(15).join(", "));
          if (k !== nz - 1) continue;
          const pressure = panel.pressure(
            (i + 0.5) / nx * panel.length,
            (j + 0.5) / ny * panel.width,
          );
          if (pressure !== 0) loads.push(`${element}, P2, ${pressure}`);
        }
      }
    }
    level += bricks;
  });
  layers.forEach(({ constants }, layer) => {
    lines.push(`*MATERIAL, NAME=M${layer}`, "*ELASTIC, TYPE=ENGINEERING CONSTANTS");
    lines.push(`${constants.slice(0, 8).join(", ")},`, `${constants[8]}`);
    lines.push(`*SOLID SECTION, ELSET=LAYER${layer}, MATERIAL=M${layer}`);
  });
  const springs = padLines(panel, { nodes, pads, element });
  lines.push(...springs.model);
  lines.push("*STEP", "*STATIC", "*BOUNDARY");
  for (const [face, directions] of Object.entries(held)) {
    const extent = face[0] === "x" ? panel.length : panel.width;
    const at = face[1] === "0" ? 0 : extent;
    for (const [node, x, y] of nodes) {
      if (Math.abs((face[0] === "x" ? x : y) - at) > 1e-9) continue;
      for (const direction of directions) lines.push(`${node}, ${direction}, ${direction}, 0`);
    }
  }
  lines.push("*DLOAD", ...loads, "*NODE PRINT, NSET=ALL", "U", "*END STEP");
  return `${lines.join("\n")}\n`;
}

/** Springs to the ground at one node a pad that moves with the mean of the pad's bottom nodes. */
function padLines(
  panel: BrickPanel,
  { nodes, pads, element }: {
    readonly nodes: Lattice["nodes"];
    readonly pads: NonNullable<BrickPanel["pads"]>;
    readonly element: number;
  },
): { readonly model: readonly string[] } {
  const model: string[] = [];
  pads.forEach(({ x0, x1, y0, y1, stiffness }, p) => {
    const near = (value: number, low: number, high: number): boolean =>
      value > low - 1e-9 && value < high + 1e-9;
    const dx = panel.length / panel.nx;
    const dy = panel.width / panel.ny;
    // Corner nodes by the trapezoid rule over the pad: weights 1, 1/2 at rims, 1/4 at corners.
    const inside = nodes.filter(([, x, y, z]) =>
      z === 0 && near(x, x0, x1) && near(y, y0, y1) &&
      near(Math.abs(x / dx - Math.round(x / dx)), 0, 0) &&
      near(Math.abs(y / dy - Math.round(y / dy)), 0, 0)
    );
    const weight = (x: number, y: number): number =>
      (near(x, x0, x0) || near(x, x1, x1) ? 0.5 : 1) *
      (near(y, y0, y0) || near(y, y1, y1) ? 0.5 : 1);
    const sum = inside.reduce((total, [, x, y]) => total + weight(x, y), 0);
    const ground = nodes.length + 1 + p;
    model.push("*NODE", `${ground}, ${(x0 + x1) / 2}, ${(y0 + y1) / 2}, -1`);
    model.push("*EQUATION", `${inside.length + 1}`);
    for (const [node, x, y] of inside) model.push(`${node}, 3, ${weight(x, y) / sum}`);
    model.push(`${ground}, 3, -1`);
    model.push(`*ELEMENT, TYPE=SPRING1, ELSET=PAD${p}`, `${element + 1 + p}, ${ground}`);
    model.push("*BOUNDARY", `${ground}, 1, 2`);
    model.push(`*SPRING, ELSET=PAD${p}`, "3", stiffness.toFixed(1));
  });
  return { model };
}

/** Deflection towards −z at the places wanted, mean of top and bottom. */
export async function solveBricks(panel: BrickPanel): Promise<readonly number[]> {
  const folder = await Deno.makeTempDir({ prefix: "panel-bricks-" });
  try {
    await Deno.writeTextFile(`${folder}/job.inp`, brickInput(panel));
    const { code, stdout } = await new Deno.Command("ccx", {
      args: ["-i", "job"],
      cwd: folder,
      env: { OMP_NUM_THREADS: "1", CCX_NPROC_EQUATION_SOLVER: "1" },
    }).output();
    const said = new TextDecoder().decode(stdout);
    if (code !== 0 || /\*ERROR/.test(said)) {
      throw new Error(`ccx failed:\n${said.match(/\*ERROR[^*]*/g)?.join("") ?? said.slice(-2000)}`);
    }
    const moved = new Map<number, number>();
    for (const line of (await Deno.readTextFile(`${folder}/job.dat`)).split("\n")) {
      const [node, , , w] = line.trim().split(/\s+/).map(Number);
      if (Number.isInteger(node) && w !== undefined && Number.isFinite(w)) moved.set(node!, w);
    }
    const { id, nz } = lattice(panel);
    return panel.wanted.map(([x, y]) => {
      const i = 2 * Math.round(panel.nx * x / panel.length);
      const j = 2 * Math.round(panel.ny * y / panel.width);
      if (Math.abs(i / (2 * panel.nx) * panel.length - x) > 1e-9) {
        throw new Error(`no node at ${x}`);
      }
      if (Math.abs(j / (2 * panel.ny) * panel.width - y) > 1e-9) throw new Error(`no node at ${y}`);
      return -(moved.get(id(i, j, 0))! + moved.get(id(i, j, 2 * nz))!) / 2;
    });
  } finally {
    await Deno.remove(folder, { recursive: true });
  }
}

/** Whether the solver can be run here. */
export async function hasCalculix(): Promise<boolean> {
  try {
    await new Deno.Command("ccx", { args: ["-v"] }).output();
    return true;
  } catch {
    return false;
  }
}
