// Part 1: the teacher of an anonymous class fetches everything after every choice, twice, with two players exchanged.
import { countsIn, firstDifference } from '../anonymity/comparison.ts';
import { type EveningPlan, type Fetched, playEvening } from '../anonymity/evening.ts';
import { type Attack, findingsOf } from './siege.ts';

const tell = findingsOf('1 class report');

export const classReport: Attack = async ({ server, seed, size }) => {
  const full = size === 'full';
  const plan: EveningPlan = { seed, form: 'guided', players: 6, deals: full ? 2 : 1, at: server };
  const before = (await playEvening(plan)).map(withoutChance);
  const after = (await playEvening({ ...plan, scripts: { 0: 3, 3: 0 } })).map(withoutChance);
  const place = firstDifference(before, after);
  const counted = countsIn(before).length;
  return [
    tell(
      `of two players who exchange all choices, what ${before.length} looks at everything tell`,
      `nothing, with counts told`,
      place ?? `nothing, with ${counted} counts told`,
      place === null && counted > 0,
    ),
  ];
};

/** Codes, times and numbers of changes, which are others in each class whoever chooses what. */
function withoutChance(fetched: Fetched): Fetched {
  return Object.fromEntries(
    Object.entries(fetched).map(([from, text]) => [
      from,
      text
        .replaceAll(/\b[2-9A-HJKMNP-Z]{8}\b/g, 'CODE')
        .replaceAll(/"(version|since)":\d+/g, '"$1":0')
        .replaceAll(/\b1\d{12}\b/g, '0')
        .replaceAll(/\b20\d\d-\d\d-\d\d\b/g, 'DAY'),
    ]),
  );
}
