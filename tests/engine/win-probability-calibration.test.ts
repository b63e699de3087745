// Win probabilities are calibrated: the proof in its small size, and the fit of the model.
import { expect, test } from 'vitest';
import { FEATURES } from '../../shared-engine/analysis/win-probability/features.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { fitModel } from '../../shared-engine/tools/win-model/fit.ts';
import { gamesOn, withTileChanged } from '../../shared-engine/tools/win-model/games.ts';
import { sampleOf } from '../../shared-engine/tools/win-model/samples.ts';
import { MOST_SECTIONS, variantCard } from '../../shared-engine/tools/win-model/variant-card.ts';
import { proof } from '../prove/proofs/calibration.ts';
import { proof as local } from '../prove/proofs/local.ts';

test('win probabilities are calibrated on held-out plays and on a card that the fit has not seen', async () => {
  const rows = await proof.run({ seed: 'tests', size: 'small' });
  expect(rows.length).toBeGreaterThan(12);
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
});

test('a tile changed for one of the wall changes the play as the chances say', async () => {
  const rows = await local.run({ seed: 'tests', size: 'small' });
  expect(rows.filter(({ ok }) => !ok)).toEqual([]);
});

test('the same games give the same model, and more reach weighs more', () => {
  const games = [houseCard(), variantCard('fit')].map((card) => {
    const { tableOf, played } = gamesOn(card, NO_SIMD);
    const samples = Array.from({ length: 30 }, (_, n) => sampleOf(played(tableOf(`fit ${n}`), `${n}`, 2)));
    // Few plays may see no wall game at all, and then nothing limits how rare it is.
    return { card, samples: [...samples, { ...samples[0]!, won: [0, 0, 0, 0, 1] }] };
  });
  const steps = { tile: 8, pair: 1, pairs: 8, concealed: 9 };
  const model = fitModel(games, steps);
  expect(fitModel(games, steps)).toEqual(model);
  expect(Object.keys(model.weights)).toEqual([...FEATURES]);
  expect(model.weights.reach).toBeGreaterThan(0.1);
  expect(Number.isFinite(model.wall.start)).toBe(true);
});

test('a changed table differs by one tile of one seat, and the walls by that tile in the same place', () => {
  const games = gamesOn(houseCard(), NO_SIMD);
  const table = games.tableOf('changed');
  const changed = withTileChanged(table, 2, stream('changed', 'tile'));
  for (const seat of [0, 1, 3] as const) expect(changed.racks[seat]).toEqual(table.racks[seat]);
  const moved = changed.racks[2].map((count, face) => count - table.racks[2][face]!);
  expect(moved.filter((by) => by !== 0).sort()).toEqual([-1, 1]);
  expect(changed.wall.filter((face, place) => face !== table.wall[place]).length).toBe(1);
});

test('a variant card is the same for the same seed, another for another, and every hand has 14 tiles', () => {
  const [one, again, other] = ['one', 'one', 'other'].map((seed) => variantCard(seed));
  expect(again).toEqual(one);
  expect(other!.hands).not.toEqual(one!.hands);
  const house = new Set(houseCard().hands.map(({ singles, groups }) => `${singles};${groups}`));
  const strange = one!.hands.filter(({ singles, groups }) => !house.has(`${singles};${groups}`));
  expect(strange.length).toBeGreaterThan(one!.hands.length / 3);
  for (const { singles, groups } of one!.hands) {
    expect([...singles, ...groups].reduce((sum, count) => sum + count, 0)).toBe(14);
  }
});

test('a variant card has as many sections as it is asked for, from one to all of them', () => {
  const sections = [1, 3, MOST_SECTIONS].map((count) => {
    const { patterns } = variantCard('sections', count);
    return new Set(patterns.map(({ section }) => section)).size;
  });
  expect(sections).toEqual([1, 3, houseCard().sections.length]);
});
