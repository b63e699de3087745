// The conditional logit that the win model is fitted by, against a published worked example.
import { describe, expect, test } from 'vitest';
import {
  type ChoiceSet,
  fitConditional,
  probabilitiesOf,
} from '../../shared-engine/tools/win-model/conditional-logit.ts';

/**
 * Source: the data set "infert" of R's package datasets (Trichopoulos et al. 1976, Brit. J. of Obst. and Gynaec. 83),
 * a matched case-control study in 83 sets: two counts of each person, the case first, then one or two controls. Here
 * its columns "induced" and "spontaneous" as two digits a person, set by set; set 74 has one control.
 */
const CASES =
  '12 10 20 20 11 21 00 00 01 00 10 21 10 20 11 20 21 01 21 01 01 20 02 01 11 02 02 02 12 20 01 10 10 02 10 02 01 12 ' +
  '00 01 02 00 00 11 00 10 02 20 20 02 12 12 11 01 02 02 10 02 01 02 02 01 01 02 10 01 01 12 02 10 10 01 01 02 02 01 ' +
  '01 10 01 01 20 01 01';
const FIRST_CONTROLS =
  '20 00 20 01 20 11 00 20 01 01 00 11 00 01 10 10 02 00 01 00 00 00 00 00 01 00 00 00 02 11 00 10 10 00 00 00 00 20 ' +
  '02 10 10 00 00 00 10 00 10 21 10 10 21 11 11 10 10 10 11 20 10 10 20 10 00 00 01 00 01 20 11 00 10 00 01 -- 02 00 ' +
  '20 00 00 00 00 01 01';
const SECOND_CONTROLS =
  '20 00 20 02 00 02 00 01 10 01 01 01 00 02 10 00 12 10 11 10 00 00 20 01 02 00 00 00 21 11 00 00 00 20 00 00 00 20 ' +
  '01 00 00 00 00 00 00 01 10 20 10 10 20 21 20 01 11 01 20 10 00 10 10 10 00 10 02 10 00 20 02 10 00 10 00 02 11 10 ' +
  '01 01 01 00 20 01 01';

function published(): readonly ChoiceSet[] {
  const [cases, first, second] = [CASES, FIRST_CONTROLS, SECOND_CONTROLS].map((text) => text.split(' '));
  return cases!.map((one, set) => {
    const rows = [one, first![set]!, second![set]!]
      .filter((digits) => digits !== '--')
      .map(([induced, spontaneous]) => [Number(spontaneous), Number(induced)]);
    return { rows, chosen: rows.map((_, person) => (person === 0 ? 1 : 0)) };
  });
}

describe('the conditional logit of the published matched sets', () => {
  const sets = published();
  const { coefficients, errors, logLikelihood } = fitConditional(sets);

  test('has the published coefficients and errors', () => {
    // Source: R's package survival, example of clogit: case ~ spontaneous + induced + strata(stratum); from memory.
    expect(coefficients[0]).toBeCloseTo(1.9859, 4);
    expect(coefficients[1]).toBeCloseTo(1.409, 4);
    expect(errors[0]).toBeCloseTo(0.3524, 4);
    expect(errors[1]).toBeCloseTo(0.3607, 4);
  });

  test('has the published likelihood ratio', () => {
    // Without coefficients every member of a set is as likely: 82 sets of three and one of two.
    const flat = -(82 * Math.log(3) + Math.log(2));
    // Source: the same; 53.15 on 2 degrees of freedom.
    expect(2 * (logLikelihood - flat)).toBeCloseTo(53.15, 2);
  });

  test('has its largest likelihood there, by a likelihood counted without the fitter', () => {
    const likelihood = (by: readonly number[]): number =>
      sets.reduce((sum, { rows }) => {
        const scores = rows.map((row) => Math.exp(row[0]! * by[0]! + row[1]! * by[1]!));
        return sum + Math.log(scores[0]! / scores.reduce((all, score) => all + score, 0));
      }, 0);
    expect(likelihood(coefficients)).toBeCloseTo(logLikelihood, 9);
    for (const [i, by] of [0, 1].flatMap((i) => [-0.01, 0.01].map((by) => [i, by] as const))) {
      expect(likelihood(coefficients.with(i, coefficients[i]! + by))).toBeLessThan(logLikelihood);
    }
  });
});

test('without columns that differ every alternative is as likely', () => {
  expect(probabilitiesOf([[1], [1], [1], [1]], [3])).toEqual([0.25, 0.25, 0.25, 0.25]);
});
