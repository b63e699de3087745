// The outlook is honest: the proof of its calibration in its small size, and the fit that made it.
import { expect, test } from 'vitest';
import { houseCard, MEASURES, NO_VECTORS, preparePlayCard } from '../../shared-engine/index.ts';
import { fitModel } from '../../shared-engine/tools/win-model/fit.ts';
import { gamesOn } from '../../shared-engine/tools/win-model/games.ts';
import { variantCard } from '../../shared-engine/tools/win-model/variant-card.ts';
import { proof } from '../prove/proofs/calibration.ts';

test('calibration holds on held-out plays and on a card never seen', async () => {
  const rows = await proof.run({ seed: 'tests', size: 'small' });
  expect(rows.length).toBeGreaterThan(12);
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
});

test('the same games make the same model, and reach speaks for a seat', () => {
  const card = houseCard();
  const play = gamesOn(card, NO_VECTORS);
  const samples = Array.from({ length: 60 }, (_, n) => play(`fit ${n}`, 2)).flat();
  const games = [{ card: preparePlayCard(card), samples }];
  const model = fitModel(games, { tile: 8, pair: 1, pairs: 8, concealed: 9 });
  expect(fitModel(games, { tile: 8, pair: 1, pairs: 8, concealed: 9 })).toEqual(model);
  expect(Object.keys(model.weights)).toEqual([...MEASURES]);
  expect(model.weights.reach).toBeGreaterThan(0.1);
  expect(model.chances.at(-1)).toBeGreaterThan(model.chances[0]!);
});

test('a variant card is the same for the same seed, another for another, and every target is a hand of 14', () => {
  const [one, again, other] = ['one', 'one', 'other'].map(variantCard);
  expect(again).toEqual(one);
  expect(other!.targets).not.toEqual(one!.targets);
  const house = new Set(houseCard().targets.map(({ singles, groups }) => `${singles};${groups}`));
  const strange = one!.targets.filter(({ singles, groups }) => !house.has(`${singles};${groups}`));
  expect(strange.length).toBeGreaterThan(one!.targets.length / 3);
  for (const { singles, groups } of one!.targets) {
    expect([...singles, ...groups].reduce((sum, count) => sum + count, 0)).toBe(14);
  }
});
