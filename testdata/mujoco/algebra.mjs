// Small dense linear algebra.

export const add = (a, b) => a.map((x, i) => x + b[i]);
export const sub = (a, b) => a.map((x, i) => x - b[i]);
export const scale = (f, a) => a.map((x) => f * x);
export const dot = (a, b) => a.reduce((sum, x, i) => sum + x * b[i], 0);
export const norm = (a) => Math.sqrt(dot(a, a));

// cross is the vector product in space.
export const cross = ([ax, ay, az], [bx, by, bz]) => [ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx];

// solve returns x of matrix · x = right by elimination with row exchange.
export function solve(matrix, right) {
  const rows = matrix.map((row, i) => [...row, right[i]]);
  const n = rows.length;
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(rows[i][k]) > Math.abs(rows[best][k])) best = i;
    [rows[k], rows[best]] = [rows[best], rows[k]];
    if (!(Math.abs(rows[k][k]) > 0)) throw new Error('the equations have no single answer');
    for (let i = k + 1; i < n; i++) {
      const f = rows[i][k] / rows[k][k];
      for (let j = k; j <= n; j++) rows[i][j] -= f * rows[k][j];
    }
  }
  const x = new Array(n);
  for (let i = n - 1; i >= 0; i--) {
    x[i] = rows[i][n];
    for (let j = i + 1; j < n; j++) x[i] -= rows[i][j] * x[j];
    x[i] /= rows[i][i];
  }
  return x;
}
