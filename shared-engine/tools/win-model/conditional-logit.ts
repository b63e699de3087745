// Conditional logit by Newton's method: which of several alternatives comes true, from what each has (McFadden 1974).

/** One row of columns for each alternative, and how often each came true. */
export interface ChoiceSet {
  readonly rows: readonly ArrayLike<number>[];
  readonly chosen: readonly number[];
}

export interface ConditionalFit {
  /** One a column. */
  readonly coefficients: readonly number[];
  /** Standard errors in the same order. */
  readonly errors: readonly number[];
  readonly logLikelihood: number;
}

/** Probability of each alternative by these coefficients. */
export function probabilitiesOf(
  rows: readonly ArrayLike<number>[],
  coefficients: ArrayLike<number>,
): readonly number[] {
  const scores = rows.map((row) => {
    let score = 0;
    for (let i = 0; i < row.length; i++) score += row[i]! * coefficients[i]!;
    return score;
  });
  const most = Math.max(...scores);
  const weights = scores.map((score) => Math.exp(score - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
}

/** Begins at 0 for every column; the columns must not be multiples of each other. */
export function fitConditional(sets: readonly ChoiceSet[], steps = 25): ConditionalFit {
  const size = sets[0]?.rows[0]?.length ?? 0;
  const beta = new Float64Array(size);
  let inverse: number[][] = [];
  let logLikelihood = 0;
  for (let step = 0; step < steps; step++) {
    const sums = sumsOver(sets, beta);
    logLikelihood = sums.logLikelihood;
    inverse = inverseOf(sums.information);
    let largest = 0;
    for (const [i, line] of inverse.entries()) {
      const move = line.reduce((sum, value, k) => sum + value * sums.gradient[k]!, 0);
      beta[i]! += move;
      largest = Math.max(largest, Math.abs(move));
    }
    if (largest < 1e-9) break;
  }
  return { coefficients: [...beta], errors: inverse.map((line, i) => Math.sqrt(line[i]!)), logLikelihood };
}

/** The log-likelihood at these coefficients, its gradient, and minus its second derivatives. */
function sumsOver(sets: readonly ChoiceSet[], beta: Float64Array) {
  const size = beta.length;
  const gradient = new Float64Array(size);
  const information = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const mean = new Float64Array(size);
  let logLikelihood = 0;
  for (const { rows, chosen } of sets) {
    const probabilities = probabilitiesOf(rows, beta);
    const trials = chosen.reduce((sum, count) => sum + count, 0);
    mean.fill(0);
    for (const [a, row] of rows.entries()) {
      if (chosen[a]! > 0) logLikelihood += chosen[a]! * Math.log(probabilities[a]!);
      for (let i = 0; i < size; i++) mean[i]! += probabilities[a]! * row[i]!;
    }
    for (const [a, row] of rows.entries()) {
      const weight = trials * probabilities[a]!;
      const rest = chosen[a]! - weight;
      for (let i = 0; i < size; i++) {
        gradient[i]! += rest * row[i]!;
        for (let k = 0; k <= i; k++) {
          information[i]![k]! += weight * (row[i]! - mean[i]!) * (row[k]! - mean[k]!);
        }
      }
    }
  }
  for (let i = 0; i < size; i++) for (let k = 0; k < i; k++) information[k]![i] = information[i]![k]!;
  return { logLikelihood, gradient, information };
}

/** Gauss–Jordan with the largest pivot; the matrix must not be singular. */
function inverseOf(matrix: readonly (readonly number[])[]): number[][] {
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
