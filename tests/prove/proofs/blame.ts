// Nobody is told that a choice was costly where it was not.

import { DEEP_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import { compare } from '../../../shared-engine/analysis/comparison/comparison.ts';
import { screen } from '../../../shared-engine/analysis/comparison/screen.ts';
import { SMALL_LOSS } from '../../../shared-engine/analysis/comparison/verdict.ts';
import { alternativesOf, gameOf, NO_RECEIVER } from '../analysis/game-without-tiles.ts';
import { judgedChoices } from '../analysis/judged-choices.ts';
import { percent, shareText } from '../analysis/proportions.ts';
import type { Proof, ProofRow, Size } from '../proof.ts';
import { keyOf } from '../seeds.ts';
import { NORMAL_POINT, wilson } from '../statistics/wilson.ts';

const GAMES: Record<Size, number> = { small: 30, full: 5_000 };
const ALTERNATIVES = 10;

export const proof: Proof = {
  summary:
    'A choice is called costly only where a long run agrees, and hardly ever where the loss is just δ.',
  async run({ seed, size }) {
    return [innocents(seed, size), atTheBorder(seed, size)];
  },
};

function innocents(seed: string, size: Size): ProofRow {
  const small = size === 'small';
  // The short run of the small size errs itself by about δ: there only what is beyond its error counts as innocent.
  const innocent = judgedChoices(seed, size).filter(
    ({ loss }) => loss.value + (small ? loss.halfWidth : 0) <= SMALL_LOSS,
  );
  const blamed = innocent.filter(({ comparison }) => comparison.verdict === 'costly').length;
  const { high } = wilson(blamed, innocent.length, NORMAL_POINT['95']);
  return {
    what: 'choices called costly although the loss of a long run is at most the smallest one told',
    value: shareText(blamed, innocent.length),
    bar: small ? 'at most one' : 'at most 1 %, Wilson upper bound at most 2 %',
    ok: small ? blamed <= 1 : blamed <= innocent.length / 100 && high <= 0.02,
  };
}

/** Every alternative is better than the choice by exactly δ: search, shared deals and fresh sample as in an analysis. */
function atTheBorder(seed: string, size: Size): ProofRow {
  const games = GAMES[size];
  const key = keyOf(seed);
  const alternatives = alternativesOf(ALTERNATIVES);
  const values = alternatives.map((_, n) => (n === 3 ? 0 : SMALL_LOSS));
  const chosen = alternatives[3]!;
  let blamed = 0;
  for (let game = 0; game < games; game++) {
    const source = gameOf(values, { seed: key + game });
    const screened = screen(source, 0, { alternatives, chosen }, DEEP_BUDGET);
    const { verdict } = compare(source, { ...NO_RECEIVER, screened, chosen, fresh: DEEP_BUDGET.fresh });
    if (verdict === 'costly') blamed++;
  }
  const bar = size === 'small' ? 0.15 : 0.05;
  return {
    what: `games of ${ALTERNATIVES} alternatives, all but the choice better by just δ: called costly`,
    value: shareText(blamed, games),
    bar: `at most ${percent(bar)} %`,
    ok: blamed <= games * bar,
  };
}
