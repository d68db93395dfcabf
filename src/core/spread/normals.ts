/** Coefficients of Wichura's algorithm AS 241 (PPND7), Applied Statistics 1988;37:477-84: about seven figures. From memory, held to a table of the normal distribution by a test. */
const CENTRE = {
  a: [3.387132726, 50.43427154, 159.2911337, 59.10937472],
  b: [1, 17.89516947, 78.75775737, 67.187564],
};
const MIDDLE = {
  a: [1.42343727, 2.75681539, 1.306728459, 0.1702382103],
  b: [1, 0.7370016425, 0.1202113277, 0],
};
const TAIL = {
  a: [6.657905115, 3.08122639, 0.4286829447, 0.01733720398],
  b: [1, 0.2419789423, 0.01225820264, 0],
};

const horner = (coefficients: readonly number[], x: number): number =>
  coefficients.reduceRight((sum, k) => sum * x + k, 0);
const ratio = ({ a, b }: typeof CENTRE, x: number): number => horner(a, x) / horner(b, x);

/** The standard normal value that a share `p` (0 < p < 1) lies below. */
export function normalQuantile(p: number): number {
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(CENTRE, 0.180625 - q * q);
  const r = Math.sqrt(-Math.log(Math.min(p, 1 - p)));
  const size = r <= 5 ? ratio(MIDDLE, r - 1.6) : ratio(TAIL, r - 5);
  return q < 0 ? -size : size;
}

/** Numbers 0…1, the same every time: a linear congruence modulo 2³¹ − 1 (Park and Miller, 48 271). */
function* chance(seed: number): Generator<number, never> {
  for (let state = seed; ; ) {
    state = (state * 48_271) % 2_147_483_647;
    yield state / 2_147_483_647;
  }
}

/** The numbers 0…n − 1 in an order by chance (Fisher and Yates). */
function shuffled(n: number, draws: Generator<number, never>): number[] {
  const order = Array.from({ length: n }, (_, i) => i);
  for (let i = n - 1; i > 0; i--) {
    const j = Math.floor(draws.next().value * (i + 1));
    [order[i], order[j]] = [order[j], order[i]];
  }
  return order;
}

/** Columns made orthogonal one after the other, each scaled to a mean square of 1 (Gram and Schmidt). */
function whitened(columns: readonly (readonly number[])[]): number[][] {
  const done: number[][] = [];
  for (const column of columns) {
    let rest = [...column];
    for (const other of done) {
      const share = rest.reduce((sum, x, i) => sum + x * other[i], 0) / rest.length;
      rest = rest.map((x, i) => x - share * other[i]);
    }
    const size = Math.sqrt(rest.reduce((sum, x) => sum + x * x, 0) / rest.length);
    done.push(rest.map((x) => x / size));
  }
  return done;
}

/**
 * Points of the n-dimensional standard normal distribution, the same every time: a Latin hypercube (one value from the middle of each of `count/2` equally likely
 * strata of every dimension, in independent orders), whitened, each point with its mirror image; so every mean is 0, every SD 1, and nothing goes with
 * anything else. `count` even, above 2n.
 */
export function normalPoints(count: number, n: number): number[][] {
  const half = count / 2;
  const draws = chance(20_231);
  const columns = Array.from({ length: n }, () =>
    shuffled(half, draws).map((stratum) => normalQuantile((stratum + 0.5) / half)),
  );
  const white = whitened(columns);
  return Array.from({ length: half }, (_, i) => {
    const point = white.map((column) => column[i]);
    return [point, point.map((x) => -x)];
  }).flat();
}
