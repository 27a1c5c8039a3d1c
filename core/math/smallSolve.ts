/** Direct solution of very small symmetric positive definite systems. */

/**
 * Solves A x = b in place by Cholesky factors, for up to a handful of unknowns.
 * @param matrix row-major, size x size, symmetric positive definite; its lower part is overwritten by the factor
 * @param vector right side, overwritten by the solution
 * @returns false where the matrix is not positive definite (the vector is then meaningless)
 */
export function solveSmall(matrix: Float64Array, vector: Float64Array, size: number): boolean {
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i * size + j];
      for (let k = 0; k < j; k++) sum -= matrix[i * size + k] * matrix[j * size + k];
      if (i === j) {
        if (!(sum > 0)) return false;
        matrix[i * size + i] = Math.sqrt(sum);
      } else matrix[i * size + j] = sum / matrix[j * size + j];
    }
  }
  for (let i = 0; i < size; i++) {
    for (let k = 0; k < i; k++) vector[i] -= matrix[i * size + k] * vector[k];
    vector[i] /= matrix[i * size + i];
  }
  for (let i = size - 1; i >= 0; i--) {
    for (let k = i + 1; k < size; k++) vector[i] -= matrix[k * size + i] * vector[k];
    vector[i] /= matrix[i * size + i];
  }
  return true;
}

/**
 * Inverse of a very small symmetric positive definite matrix.
 * @param matrix row-major, size x size; left alone
 * @returns row-major; NaN throughout where the matrix is not positive definite
 */
export function inverseSmall(matrix: Float64Array, size: number): Float64Array {
  const inverse = new Float64Array(size * size).fill(Number.NaN);
  for (let k = 0; k < size; k++) {
    const column = Float64Array.from({ length: size }, (_, j) => (j === k ? 1 : 0));
    if (!solveSmall(matrix.slice(), column, size)) return inverse.fill(Number.NaN);
    for (let j = 0; j < size; j++) inverse[j * size + k] = column[j];
  }
  return inverse;
}
