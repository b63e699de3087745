// Win probabilities are calibrated: the proof in its small size, and the fit of the model.
import { expect, test } from 'vitest';
import { preparePlayCard } from '../../shared-engine/analysis/play/play-card.ts';
import { FEATURES } from '../../shared-engine/analysis/win-probability/features.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { fitModel } from '../../shared-engine/tools/win-model/fit.ts';
import { gamesOn } from '../../shared-engine/tools/win-model/games.ts';
import { variantCard } from '../../shared-engine/tools/win-model/variant-card.ts';
import { proof } from '../prove/proofs/calibration.ts';

test('win probabilities are calibrated on held-out plays and on a card that the fit has not seen', async () => {
  const rows = await proof.run({ seed: 'tests', size: 'small' });
  expect(rows.length).toBeGreaterThan(12);
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
});

test('the same games give the same model, and more reach a higher win probability', () => {
  const card = houseCard();
  const play = gamesOn(card, NO_SIMD);
  const samples = Array.from({ length: 60 }, (_, n) => play(`fit ${n}`, 2)).flat();
  const games = [{ card: preparePlayCard(card), samples }];
  const model = fitModel(games, { tile: 8, pair: 1, pairs: 8, concealed: 9 });
  expect(fitModel(games, { tile: 8, pair: 1, pairs: 8, concealed: 9 })).toEqual(model);
  expect(Object.keys(model.weights)).toEqual([...FEATURES]);
  expect(model.weights.reach).toBeGreaterThan(0.1);
  expect(model.winProbabilities.at(-1)).toBeGreaterThan(model.winProbabilities[0]!);
});

test('a variant card is the same for the same seed, another for another, and every hand has 14 tiles', () => {
  const [one, again, other] = ['one', 'one', 'other'].map(variantCard);
  expect(again).toEqual(one);
  expect(other!.hands).not.toEqual(one!.hands);
  const house = new Set(houseCard().hands.map(({ singles, groups }) => `${singles};${groups}`));
  const strange = one!.hands.filter(({ singles, groups }) => !house.has(`${singles};${groups}`));
  expect(strange.length).toBeGreaterThan(one!.hands.length / 3);
  for (const { singles, groups } of one!.hands) {
    expect([...singles, ...groups].reduce((sum, count) => sum + count, 0)).toBe(14);
  }
});
