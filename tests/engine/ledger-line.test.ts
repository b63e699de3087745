// What choices cost and luck brought over time, from the ledgers that rounds store.
import { describe, expect, it } from 'vitest';
import {
  COST_LINE,
  costWords,
  leftOutWords,
  lineDescription,
} from '../../client/practice/habits/cost-line-strings.ts';
import { ledgerLine } from '../../shared-engine/practice/ledger-line.ts';
import { storedChoice } from '../kit/stored-rounds.ts';

const round = (nth: number, choices: number, luck: number) => ({
  playedAt: nth,
  choices: [storedChoice({ verdict: 'best' })],
  ledger: { start: 25, close: 25 + choices + luck - 1, choices, halfWidth: 1, standIns: -1, jumps: 0 },
});

describe('the line of choices and luck', () => {
  const rounds = Array.from({ length: 20 }, (_, nth) =>
    round(nth, nth < 10 ? -6 : -2, nth % 2 === 0 ? 3 : -2),
  );

  it('goes from the first rounds to the latest, in points of four rounds or more', () => {
    const line = ledgerLine(rounds.toReversed());
    expect(line.points.map(({ from, rounds }) => [from, rounds])).toEqual([
      [1, 4],
      [5, 4],
      [9, 4],
      [13, 4],
      [17, 4],
    ]);
    expect(line.points.map(({ cost }) => cost.value)).toEqual([6, 6, 4, 2, 2]);
    expect(line.all).toMatchObject({ rounds: 20, cost: { value: 4 }, luck: { value: 0.5 } });
    expect(costWords(line)).toMatch(
      /^Over 20 rounds, your choices cost about 4\.0 wins in 100 games a round \(between 3\.\d and 5\.\d\)\. Luck brought about 0\.5 \(between −\d\.\d and \d\.\d\)\.$/,
    );
    expect(lineDescription(line)).toContain(`${COST_LINE.cost}: 6.0, 6.0, 4.0, 2.0, 2.0.`);
    expect(ledgerLine(Array.from({ length: 300 }, (_, nth) => round(nth, -1, 0))).points).toHaveLength(8);
  });

  it('says nothing under eight rounds, and how many rounds are missing or left out', () => {
    const { ledger: _, ...waiting } = round(1, -1, 0);
    const helped = { ...round(2, -9, 0), helped: ['first-right' as const] };
    const line = ledgerLine([...rounds.slice(0, 7), waiting, helped]);
    expect(line.points).toEqual([]);
    expect(line.all?.cost.value).toBe(6);
    expect(costWords(line)).toBe('Only 7 rounds have been worked out so far. 8 are a start.');
    expect(leftOutWords(line)).toBe(
      'One round is not worked out yet. One round is left out because the coach helped.',
    );
    expect(leftOutWords(ledgerLine(rounds))).toBeNull();
    expect(costWords(ledgerLine([]))).toBe('No round has been worked out so far. 8 are a start.');
  });
});
