/** Halvings after which two neighbouring doubles bracket the root, whatever the bracket was. */
const HALVINGS = 64;

/** Steps of the golden section that narrow a bracket to a millionth of it: enough, as a low place is flat. */
const GOLDEN_STEPS = 30;

const GOLDEN = (Math.sqrt(5) - 1) / 2;

/**
 * Where a continuous function is 0 between two places: looked for between `pieces` + 1 even places and where it
 * comes nearest to 0 between three of them, then halved down to the last bit.
 */
export function rootsIn(f: (s: number) => number, from: number, to: number, pieces: number): number[] {
  const places = Array.from({ length: pieces + 1 }, (_, k) => from + ((to - from) * k) / pieces);
  const known = places.map((s) => ({ s, value: f(s) }));
  const low: typeof known = [];
  for (let k = 1; k + 1 < known.length; k++) {
    const [before, here, after] = known.slice(k - 1, k + 2) as [Known, Known, Known];
    const sign = Math.sign(here.value);
    if (sign === 0) continue;
    if (sign * before.value < sign * here.value || sign * after.value < sign * here.value) continue;
    low.push(nearestToZero((s) => sign * f(s), before.s, after.s, sign));
  }
  const all = [...known, ...low].sort((a, b) => a.s - b.s);
  const roots: number[] = [];
  for (let k = 0; k + 1 < all.length; k++) {
    const [one, other] = all.slice(k, k + 2) as [Known, Known];
    if (one.value === 0) roots.push(one.s);
    else if (one.value < 0 !== other.value < 0 && other.value !== 0) roots.push(halved(f, one, other));
  }
  const last = all[all.length - 1];
  if (last !== undefined && last.value === 0) roots.push(last.s);
  return roots;
}

interface Known {
  readonly s: number;
  readonly value: number;
}

function nearestToZero(f: (s: number) => number, from: number, to: number, sign: number): Known {
  let [a, b] = [from, to];
  let c = b - GOLDEN * (b - a);
  let d = a + GOLDEN * (b - a);
  let [fc, fd] = [f(c), f(d)];
  for (let step = 0; step < GOLDEN_STEPS && fc > 0 && fd > 0; step++) {
    if (fc < fd) {
      [b, d, fd] = [d, c, fc];
      c = b - GOLDEN * (b - a);
      fc = f(c);
    } else {
      [a, c, fc] = [c, d, fd];
      d = a + GOLDEN * (b - a);
      fd = f(d);
    }
  }
  return fc < fd ? { s: c, value: sign * fc } : { s: d, value: sign * fd };
}

function halved(f: (s: number) => number, one: Known, other: Known): number {
  let [a, b] = [one.s, other.s];
  const below = one.value < 0;
  for (let step = 0; step < HALVINGS; step++) {
    const middle = a + (b - a) / 2;
    if (middle === a || middle === b) break;
    if (f(middle) < 0 === below) a = middle;
    else b = middle;
  }
  return a + (b - a) / 2;
}
