/**
 * Laminates of 8 plies, from angles and thicknesses to the first ply that fails: rotation, A B D,
 * inverse, response, ply stress at both faces, Tsai–Wu. Figures are invented for timing.
 *
 * Small group: 500 laminates by the batch engine, by the plain functions, and by matrices of
 * mathjs. Large group: 200,000 laminates by the batch engine on one thread and on two workers, and
 * by numpy in pieces that fit the cache, where `python3` has numpy and may be run
 * (`deno bench --allow-read --allow-run=python3 tests/bench/laminate_bench.ts`).
 */
import {
  analyseBatch,
  analyseBatchAsync,
  firstPlyFailure,
  type Lamina,
  type LaminateBatch,
  laminateResponse,
  makeBatchArrays,
  openBatchWorkers,
  type Stack,
} from "@laminate/notebooks/laminate";
import * as math from "mathjs";
import { assertClose } from "../close.ts";

const MANY = 200_000;
const FEW = 500;
const PLIES = 8;
const LOAD = { Nx: 100e3, Ny: 40e3, Nxy: 25e3, Mx: 20, My: 10, Mxy: 5 };

const LAMINA: Lamina = {
  name: "glass",
  ...{ E1: 38e9, E2: 9e9, G12: 3.6e9, nu12: 0.28, G13: 3.6e9, G23: 3e9 },
  ...{ density: 1850, alpha1: 7e-6, alpha2: 28e-6 },
  strengths: { Xt: 900e6, Xc: 600e6, Yt: 40e6, Yc: 140e6, S: 60e6 },
};

/** Angles and thicknesses spread evenly, the same in every language: multiples of roots, mod 1. */
function spread(place: number, root: number): number {
  const product = place * root;
  return product - Math.floor(product);
}

function batchOfSize(count: number): LaminateBatch {
  const arrays = makeBatchArrays({ count, plyCount: PLIES });
  for (let i = 0; i < count * PLIES; i++) {
    arrays.angleDeg[i] = 180 * spread(i, Math.SQRT2) - 90;
    arrays.thickness[i] = 0.15e-3 + 0.3e-3 * spread(i, Math.sqrt(3));
  }
  arrays.loads.set(Object.values(LOAD));
  return { laminas: [LAMINA], plyCount: PLIES, ...arrays };
}

function stacksOf({ thickness, angleDeg, plyCount }: LaminateBatch): Stack[] {
  return Array.from(
    { length: thickness.length / plyCount },
    (_, i) =>
      Array.from({ length: plyCount }, (_, k) => ({
        lamina: LAMINA,
        thickness: thickness[i * plyCount + k]!,
        angleDeg: angleDeg[i * plyCount + k]!,
      })),
  );
}

const many = batchOfSize(MANY);
const few = batchOfSize(FEW);
const stacks = stacksOf(few);

/** Utilisations add up to the same, whoever computes them. */
function sum(values: ArrayLike<number>): number {
  return Array.from(values).reduce((total, value) => total + value, 0);
}

function checkSum(value: number, batch: LaminateBatch): void {
  assertClose(value, sum(analyseBatch(batch).utilisation), { relative: 1e-9 });
}

/** The plain way to write it down with a matrix library. */
function withMathjs(stack: Stack): number {
  const { E1, E2, G12, nu12, strengths } = LAMINA;
  const { Xt, Xc, Yt, Yc, S } = strengths!;
  const k = 1 - nu12 * nu12 * E2 / E1;
  const Q = math.matrix([[E1 / k, nu12 * E2 / k, 0], [nu12 * E2 / k, E2 / k, 0], [0, 0, G12]]);
  let z = -stack.reduce((total, ply) => total + ply.thickness, 0) / 2;
  let [A, B, D] = [math.zeros(3, 3), math.zeros(3, 3), math.zeros(3, 3)] as math.Matrix[];
  const plies = stack.map(({ thickness, angleDeg }) => {
    const [c, s] = [Math.cos(angleDeg * Math.PI / 180), Math.sin(angleDeg * Math.PI / 180)];
    const R = math.matrix([
      [c * c, s * s, s * c],
      [s * s, c * c, -s * c],
      [-2 * s * c, 2 * s * c, c * c - s * s],
    ]);
    const Qbar = math.multiply(math.multiply(math.transpose(R), Q), R);
    const [bottom, top] = [z, z + thickness];
    z = top;
    A = math.add(A!, math.multiply(Qbar, top - bottom)) as math.Matrix;
    B = math.add(B!, math.multiply(Qbar, (top ** 2 - bottom ** 2) / 2)) as math.Matrix;
    D = math.add(D!, math.multiply(Qbar, (top ** 3 - bottom ** 3) / 3)) as math.Matrix;
    return { R, bottom, top };
  });
  const stiffness = math.concat(math.concat(A!, B!), math.concat(B!, D!), 0) as math.Matrix;
  const strain = math.multiply(math.inv(stiffness), math.matrix(Object.values(LOAD)));
  const [e, kappa] = [
    math.subset(strain, math.index([0, 1, 2])),
    math.subset(strain, math.index([3, 4, 5])),
  ] as unknown as math.Matrix[];
  let worst = 0;
  for (const { R, bottom, top } of plies) {
    for (const height of [bottom, top]) {
      const local = math.multiply(R, math.add(e!, math.multiply(kappa!, height)) as math.Matrix);
      const [s1, s2, t] = math.multiply(Q, local).toArray() as [number, number, number];
      const b = (1 / Xt - 1 / Xc) * s1 + (1 / Yt - 1 / Yc) * s2;
      const a = s1 * s1 / (Xt * Xc) + s2 * s2 / (Yt * Yc) + t * t / (S * S) -
        s1 * s2 / Math.sqrt(Xt * Xc * Yt * Yc);
      worst = Math.max(worst, (b + Math.sqrt(b * b + 4 * a)) / 2);
    }
  }
  return worst;
}

const SMALL = { group: `${FEW} laminates` };
checkSum(sum(stacks.map(withMathjs)), few);
checkSum(
  sum(stacks.map((stack) => 1 / firstPlyFailure(stack, LOAD, { criterion: "Tsai-Wu" }).ratio!)),
  few,
);

Deno.bench("batch engine", { ...SMALL, baseline: true }, () => {
  analyseBatch(few);
});
Deno.bench("plain: response of each stack", SMALL, () => {
  for (const stack of stacks) laminateResponse(stack, LOAD);
});
Deno.bench("plain: first ply of each stack", SMALL, () => {
  for (const stack of stacks) firstPlyFailure(stack, LOAD, { criterion: "Tsai-Wu" });
});
Deno.bench("mathjs matrices", SMALL, () => {
  stacks.forEach(withMathjs);
});

const LARGE = { group: `${MANY} laminates` };
const workers = await openBatchWorkers(2);

Deno.bench("batch engine, one thread", { ...LARGE, baseline: true }, () => {
  analyseBatch(many);
});
Deno.bench("batch engine, one thread in steps", LARGE, async () => {
  await analyseBatchAsync(many, { threads: 1 });
});
Deno.bench(`batch engine, ${workers.threads} workers`, LARGE, async () => {
  await workers.analyse(many);
});

/** Says 0, then answers each line on its input with the sum of the utilisations. */
const NUMPY = `
import sys, numpy as np
N, P = ${MANY}, ${PLIES}
i = np.arange(N * P, dtype=float).reshape(N, P)
angle = np.radians(180 * (i * np.sqrt(2) % 1) - 90)
thickness = 0.15e-3 + 0.3e-3 * (i * np.sqrt(3) % 1)
E1, E2, G, nu = ${LAMINA.E1}, ${LAMINA.E2}, ${LAMINA.G12}, ${LAMINA.nu12}
Xt, Xc, Yt, Yc, S = ${Object.values(LAMINA.strengths!).join(", ")}
k = 1 - nu * nu * E2 / E1
Q11, Q12, Q22, Q66 = E1 / k, nu * E2 / k, E2 / k, G
U1, U2 = (3 * Q11 + 3 * Q22 + 2 * Q12 + 4 * Q66) / 8, (Q11 - Q22) / 2
U3, U4 = (Q11 + Q22 - 2 * Q12 - 4 * Q66) / 8, (Q11 + Q22 + 6 * Q12 - 4 * Q66) / 8
load = np.array([${Object.values(LOAD).join(", ")}])
def utilisation(theta, t):
    n = len(t)
    c, s = np.cos(2 * theta), np.sin(2 * theta)
    c4, s4 = U3 * (c * c - s * s), U3 * 2 * s * c
    Q = np.empty((n, P, 3, 3))
    Q[..., 0, 0], Q[..., 1, 1] = U1 + U2 * c + c4, U1 - U2 * c + c4
    Q[..., 0, 1] = Q[..., 1, 0] = U4 - c4
    Q[..., 2, 2] = (U1 - U4) / 2 - c4
    Q[..., 0, 2] = Q[..., 2, 0] = U2 * s / 2 + s4
    Q[..., 1, 2] = Q[..., 2, 1] = U2 * s / 2 - s4
    top = np.cumsum(t, 1) - t.sum(1)[:, None] / 2
    mid = top - t / 2
    abd = np.empty((n, 6, 6))
    abd[:, :3, :3] = np.einsum("nk,nkij->nij", t, Q)
    abd[:, :3, 3:] = abd[:, 3:, :3] = np.einsum("nk,nkij->nij", t * mid, Q)
    abd[:, 3:, 3:] = np.einsum("nk,nkij->nij", t * (mid * mid + t * t / 12), Q)
    e = np.linalg.inv(abd) @ load
    z = np.stack([top - t, top], -1)
    x, y, g = (e[:, i, None, None] + z * e[:, i + 3, None, None] for i in range(3))
    c, s = c[..., None], s[..., None]
    mean, half = (x + y) / 2, (x - y) / 2
    turned = half * c + g / 2 * s
    s1 = Q11 * (mean + turned) + Q12 * (mean - turned)
    s2 = Q12 * (mean + turned) + Q22 * (mean - turned)
    tau = Q66 * (g * c - 2 * half * s)
    b = (1 / Xt - 1 / Xc) * s1 + (1 / Yt - 1 / Yc) * s2
    a = s1 * s1 / (Xt * Xc) + s2 * s2 / (Yt * Yc) + tau * tau / S ** 2
    a -= s1 * s2 / (Xt * Xc * Yt * Yc) ** 0.5
    u = ((b + np.sqrt(b * b + 4 * a)) / 2).reshape(n, 2 * P)
    first = u.argmax(1)
    return u[np.arange(n), first]
print(0, flush=True)
for line in sys.stdin:
    parts = range(0, N, 2000)
    print(sum(utilisation(angle[i:i + 2000], thickness[i:i + 2000]).sum() for i in parts), flush=True)
`;

/** Starts numpy; nothing where it is not to be had. */
async function startNumpy(): Promise<(() => Promise<number>) | undefined> {
  const permission = await Deno.permissions.query({ name: "run", command: "python3" });
  if (permission.state !== "granted") return undefined;
  const child = new Deno.Command("python3", {
    args: ["-c", NUMPY],
    env: { OMP_NUM_THREADS: "1", OPENBLAS_NUM_THREADS: "1" },
    stdin: "piped",
    stdout: "piped",
    stderr: "null",
  }).spawn();
  const [writer, reader] = [child.stdin.getWriter(), child.stdout.getReader()];
  let heard = "";
  const answer = async (): Promise<number> => {
    while (!heard.includes("\n")) {
      const { value } = await reader.read();
      if (value === undefined) return NaN;
      heard += new TextDecoder().decode(value);
    }
    const [line, ...rest] = heard.split("\n");
    heard = rest.join("\n");
    return Number(line);
  };
  // It says 0 once it is up; without numpy it ends before it says anything.
  if (await answer() !== 0) return undefined;
  return async () => {
    await writer.write(new TextEncoder().encode("\n"));
    return await answer();
  };
}

const askNumpy = await startNumpy();
if (askNumpy !== undefined) checkSum(await askNumpy(), many);

Deno.bench("numpy, 2,000 at a time", { ...LARGE, ignore: askNumpy === undefined }, async () => {
  await askNumpy!();
});
