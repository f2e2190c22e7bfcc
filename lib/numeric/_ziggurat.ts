/**
 * The hot kernel of the random numbers: xoshiro128++ and the ziggurat over exp(−x²/2).
 *
 * The half bell is cut into 256 layers of one area; a point in a layer is under the bell at once
 * unless it falls in the layer's edge (1.2 % of draws). Indices are masked, hence the `!`.
 */

const LAYERS = 256;
/** Where the tail begins, for 256 layers; it makes the top layer close at 0 (checked by a test). */
export const TAIL_START = 3.6541528853610088;
/** Area of one layer: the base strip under the bell at the tail's start, with the tail. */
const LAYER_AREA = 0.004928673233974655;
/** One step of a layer's 24-bit grid of signed places. */
const STEP = 2 ** -31;
const UNIT = 2 ** -32;

/** Outer x of each layer from the base up; the base counts as wide as its area asks. */
export const LAYER_WIDTH = layerWidths();
/** Height of the bell at each outer x. */
const LAYER_HEIGHT = LAYER_WIDTH.map((x) => Math.exp(-0.5 * x * x));

function layerWidths(): Float64Array {
  const width = new Float64Array(LAYERS + 1);
  width[0] = LAYER_AREA / Math.exp(-0.5 * TAIL_START * TAIL_START);
  width[1] = TAIL_START;
  for (let i = 2; i < LAYERS; i++) {
    const below = width[i - 1]!;
    width[i] = Math.sqrt(-2 * Math.log(LAYER_AREA / below + Math.exp(-0.5 * below * below)));
  }
  return width;
}

/** Spreads a seed over the four words of state by splitmix32; never all zero in practice. */
export function seededState(seed: number): Int32Array {
  const state = new Int32Array(4);
  let mixer = (seed | 0) ^ Math.imul((seed / 2 ** 32) | 0, 0x9e3779b1);
  for (let i = 0; i < 4; i++) {
    mixer = (mixer + 0x9e3779b9) | 0;
    let word = mixer ^ (mixer >>> 16);
    word = Math.imul(word, 0x21f0aaad);
    word ^= word >>> 15;
    word = Math.imul(word, 0x735a2d97);
    state[i] = word ^ (word >>> 15);
  }
  if (state.every((word) => word === 0)) state[0] = 1;
  return state;
}

/** The next 32 bits, as a signed whole number. */
export function nextBits(state: Int32Array): number {
  const s0 = state[0]!;
  const s1 = state[1]!;
  const s2 = state[2]! ^ s0;
  const s3 = state[3]! ^ s1;
  const sum = (s0 + state[3]!) | 0;
  state[0] = s0 ^ s3;
  state[1] = s1 ^ s2;
  state[2] = s2 ^ (s1 << 9);
  state[3] = (s3 << 11) | (s3 >>> 21);
  return (((sum << 7) | (sum >>> 25)) + s0) | 0;
}

/** The next number above 0 and below 1. */
export function nextUniform(state: Int32Array): number {
  return ((nextBits(state) >>> 0) + 0.5) * UNIT;
}

/** The next standard normal number. */
export function nextNormal(state: Int32Array): number {
  for (;;) {
    const word = nextBits(state);
    const layer = word & 255;
    const x = ((word & -256) | 128) * STEP * LAYER_WIDTH[layer]!;
    if (Math.abs(x) < LAYER_WIDTH[layer + 1]!) return x;
    const accepted = inEdge(state, layer, x);
    if (accepted !== 0) return accepted;
  }
}

/** `nextNormal` over and over, with the state in registers between draws. */
export function fillNormals(state: Int32Array, target: Float64Array): void {
  let s0 = state[0]!;
  let s1 = state[1]!;
  let s2 = state[2]!;
  let s3 = state[3]!;
  for (let i = 0; i < target.length; i++) {
    for (;;) {
      const sum = (s0 + s3) | 0;
      const word = (((sum << 7) | (sum >>> 25)) + s0) | 0;
      const shifted = s1 << 9;
      s2 ^= s0;
      s3 ^= s1;
      s1 ^= s2;
      s0 ^= s3;
      s2 ^= shifted;
      s3 = (s3 << 11) | (s3 >>> 21);
      const layer = word & 255;
      const x = ((word & -256) | 128) * STEP * LAYER_WIDTH[layer]!;
      if (Math.abs(x) < LAYER_WIDTH[layer + 1]!) {
        target[i] = x;
        break;
      }
      state[0] = s0;
      state[1] = s1;
      state[2] = s2;
      state[3] = s3;
      const accepted = inEdge(state, layer, x);
      s0 = state[0]!;
      s1 = state[1]!;
      s2 = state[2]!;
      s3 = state[3]!;
      if (accepted !== 0) {
        target[i] = accepted;
        break;
      }
    }
  }
  state[0] = s0;
  state[1] = s1;
  state[2] = s2;
  state[3] = s3;
}

/** A point in the edge of its layer: the number it becomes, or 0 (never drawn) to try again. */
function inEdge(state: Int32Array, layer: number, x: number): number {
  if (layer === 0) return (x < 0 ? -1 : 1) * tail(state);
  const low = LAYER_HEIGHT[layer]!;
  const height = low + nextUniform(state) * (LAYER_HEIGHT[layer + 1]! - low);
  return height < Math.exp(-0.5 * x * x) ? x : 0;
}

/** A number from the tail, by Marsaglia's exponential rejection. */
function tail(state: Int32Array): number {
  for (;;) {
    const beyond = -Math.log(nextUniform(state)) / TAIL_START;
    const limit = -Math.log(nextUniform(state));
    if (limit + limit >= beyond * beyond) return TAIL_START + beyond;
  }
}
