/** A small square matrix, by rows. */
export type Matrix = readonly (readonly number[])[];

/** Smallest share of a pivot that elimination may leave before a matrix counts as singular. */
const SINGULAR = 1e-12;

/**
 * Inverse of a symmetric positive definite matrix by Gauss-Jordan elimination, which needs no
 * exchange of rows for such a one. Undefined when it is not positive definite: some combination of
 * the unknowns is not determined. Rows are scaled by the diagonal first, so units do not matter.
 */
export const inverse = (matrix: Matrix): Matrix | undefined => {
  const size = matrix.length;
  const scale = matrix.map((row, i) => 1 / Math.sqrt(row[i] ?? NaN));
  if (!scale.every((s) => Number.isFinite(s) && s > 0)) return undefined;
  const work = matrix.map((row, i) => [
    ...row.map((value, j) => value * (scale[i] ?? 0) * (scale[j] ?? 0)),
    ...row.map((_, j) => (i === j ? 1 : 0)),
  ]);
  for (const [pivotAt, pivotRow] of work.entries()) {
    const pivot = pivotRow[pivotAt] ?? 0;
    if (!(pivot > SINGULAR)) return undefined;
    pivotRow.forEach((value, j) => (pivotRow[j] = value / pivot));
    for (const [i, row] of work.entries()) {
      const factor = row[pivotAt] ?? 0;
      if (i !== pivotAt) pivotRow.forEach((value, j) => (row[j] = (row[j] ?? 0) - factor * value));
    }
  }
  return work.map((row, i) =>
    row.slice(size).map((value, j) => value * (scale[i] ?? 0) * (scale[j] ?? 0)),
  );
};

/** Matrix times vector. */
export const times = (matrix: Matrix, vector: readonly number[]): number[] =>
  matrix.map((row) => row.reduce((sum, value, j) => sum + value * (vector[j] ?? 0), 0));

/** x' M y. */
export const form = (x: readonly number[], matrix: Matrix, y: readonly number[]): number =>
  times(matrix, y).reduce((sum, value, i) => sum + value * (x[i] ?? 0), 0);
