/** A row of three numbers. */
export type Row3 = readonly [number, number, number];

/** Sweeps of rotations; each squares what is left beside the diagonal. */
const MAX_SWEEPS = 30;

/** Share of the largest eigenvalue under which one counts as 0: the square of what readings are told apart by. */
const NOTHING = 1e-13;

/**
 * The pseudo-inverse of a matrix of some rows and three columns, and by column how much of it the rows leave free: 0 where they
 * determine it, 1 where they say nothing of it.
 *
 * Source: eigenvectors of the normal matrix by Jacobi rotations (Golub and Van Loan, Matrix Computations, 4th ed.,
 * sections 5.5.2 and 8.5; from memory).
 */
export function pseudoInverse(rows: readonly Row3[]): { inverse: number[][]; free: number[] } {
  const normal = [0, 1, 2].map((i) =>
    [0, 1, 2].map((j) => rows.reduce((sum, row) => sum + (row[i] as number) * (row[j] as number), 0)),
  );
  const { values, vectors } = eigen(normal);
  const most = Math.max(...values);
  const kept = values.flatMap((value, k) => (value > NOTHING * most ? [k] : []));
  const at = (i: number, k: number) => (vectors[i] as number[])[k] as number;
  const inverse = [0, 1, 2].map((i) =>
    rows.map((row) =>
      kept.reduce((sum, k) => {
        const along = row.reduce((all, value, j) => all + value * at(j, k), 0);
        return sum + (at(i, k) * along) / (values[k] as number);
      }, 0),
    ),
  );
  const free = [0, 1, 2].map((i) =>
    Math.sqrt(Math.max(0, 1 - kept.reduce((sum, k) => sum + at(i, k) ** 2, 0))),
  );
  return { inverse, free };
}

/** Eigenvalues of a symmetric matrix of three rows, and their vectors as columns. */
function eigen(matrix: readonly (readonly number[])[]): { values: number[]; vectors: number[][] } {
  const a = matrix.map((row) => [...row]);
  const v = [0, 1, 2].map((i) => [0, 1, 2].map((j) => (i === j ? 1 : 0)));
  const get = (m: number[][], i: number, j: number) => (m[i] as number[])[j] as number;
  const set = (m: number[][], i: number, j: number, value: number) => {
    (m[i] as number[])[j] = value;
  };
  for (let sweep = 0; sweep < MAX_SWEEPS; sweep++) {
    let off = 0;
    for (const [p, q] of [
      [0, 1],
      [0, 2],
      [1, 2],
    ] as const) {
      const apq = get(a, p, q);
      off = Math.max(off, Math.abs(apq));
      if (apq === 0) continue;
      const theta = (get(a, q, q) - get(a, p, p)) / (2 * apq);
      const t = (theta < 0 ? -1 : 1) / (Math.abs(theta) + Math.hypot(theta, 1));
      const c = 1 / Math.hypot(t, 1);
      const s = t * c;
      for (let k = 0; k < 3; k++) {
        const [kp, kq] = [get(a, k, p), get(a, k, q)];
        set(a, k, p, c * kp - s * kq);
        set(a, k, q, s * kp + c * kq);
      }
      for (let k = 0; k < 3; k++) {
        const [pk, qk] = [get(a, p, k), get(a, q, k)];
        set(a, p, k, c * pk - s * qk);
        set(a, q, k, s * pk + c * qk);
        const [kp, kq] = [get(v, k, p), get(v, k, q)];
        set(v, k, p, c * kp - s * kq);
        set(v, k, q, s * kp + c * kq);
      }
    }
    if (off === 0) break;
  }
  return { values: [0, 1, 2].map((i) => get(a, i, i)), vectors: v };
}
