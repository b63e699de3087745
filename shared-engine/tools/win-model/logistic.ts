// Logistic regression by Newton's method, and the two scores that judge predicted chances.

export interface LogisticFit {
  /** The constant first, then one a column. */
  readonly coefficients: readonly number[];
  /** Standard errors in the same order. */
  readonly errors: readonly number[];
  /** Mean −log likelihood a trial. */
  readonly loss: number;
}

/** Rows of columns, and for each row how many of its trials hit. */
export interface Trials {
  readonly rows: readonly (readonly number[])[];
  readonly hits: readonly number[];
  readonly trials: readonly number[];
}

export function fitLogistic({ rows, hits, trials }: Trials, steps = 25): LogisticFit {
  const size = (rows[0]?.length ?? 0) + 1;
  const beta = new Array<number>(size).fill(0);
  let inverse: number[][] = [];
  let loss = 0;
  for (let step = 0; step < steps; step++) {
    const gradient = new Array<number>(size).fill(0);
    const hessian = Array.from({ length: size }, () => new Array<number>(size).fill(0));
    loss = 0;
    let total = 0;
    for (const [at, row] of rows.entries()) {
      let score = beta[0]!;
      for (let i = 1; i < size; i++) score += beta[i]! * row[i - 1]!;
      const chance = 1 / (1 + Math.exp(-score));
      const n = trials[at]!;
      const rest = hits[at]! - n * chance;
      const weight = n * chance * (1 - chance);
      loss -= hits[at]! * Math.log(chance) + (n - hits[at]!) * Math.log(1 - chance);
      total += n;
      for (let i = 0; i < size; i++) {
        const x = i === 0 ? 1 : row[i - 1]!;
        gradient[i]! += rest * x;
        for (let k = 0; k <= i; k++) hessian[i]![k]! += weight * x * (k === 0 ? 1 : row[k - 1]!);
      }
    }
    for (let i = 0; i < size; i++) for (let k = 0; k < i; k++) hessian[k]![i] = hessian[i]![k]!;
    loss /= total;
    inverse = inverseOf(hessian);
    const move = inverse.map((line) => line.reduce((sum, value, i) => sum + value * gradient[i]!, 0));
    for (let i = 0; i < size; i++) beta[i]! += move[i]!;
    if (Math.max(...move.map(Math.abs)) < 1e-9) break;
  }
  return { coefficients: beta, errors: inverse.map((line, i) => Math.sqrt(line[i]!)), loss };
}

/** Gauss–Jordan with the largest pivot; the matrix must not be singular. */
export function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const work = matrix.map((line, i) => [...line, ...line.map((_, k) => (k === i ? 1 : 0))]);
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let i = column; i < size; i++) {
      if (Math.abs(work[i]![column]!) > Math.abs(work[pivot]![column]!)) pivot = i;
    }
    [work[column], work[pivot]] = [work[pivot]!, work[column]!];
    const head = work[column]![column]!;
    work[column] = work[column]!.map((value) => value / head);
    for (let i = 0; i < size; i++) {
      if (i === column) continue;
      const factor = work[i]![column]!;
      work[i] = work[i]!.map((value, k) => value - factor * work[column]![k]!);
    }
  }
  return work.map((line) => line.slice(size));
}

export function logit(chance: number): number {
  return Math.log(chance / (1 - chance));
}

/**
 * Slope of the outcomes on the logit of the chances predicted for them: 1 where a change in the prediction means
 * what it says, below 1 where predictions are too bold (Cox 1958).
 */
export function calibrationSlope(
  chances: readonly number[],
  hits: readonly number[],
): { readonly slope: number; readonly intercept: number; readonly error: number } {
  const { coefficients, errors } = fitLogistic({
    rows: chances.map((chance) => [logit(chance)]),
    hits,
    trials: hits.map(() => 1),
  });
  return { slope: coefficients[1]!, intercept: coefficients[0]!, error: errors[1]! };
}

/** Mean squared distance between chances and outcomes (Brier 1950). */
export function brier(chances: readonly number[], outcomes: readonly number[]): number {
  return chances.reduce((sum, chance, i) => sum + (chance - outcomes[i]!) ** 2, 0) / chances.length;
}
