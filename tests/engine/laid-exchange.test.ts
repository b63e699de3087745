// An exchange laid in by hand against rounds that were really played: the same record, the same judgements.
import { describe, expect, test } from 'vitest';
import { SHALLOW_BUDGET } from '../../shared-engine/analysis/comparison/budget.ts';
import { analyzeDecision, decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { STANDARD_TERMS, type Terms } from '../../shared-engine/rules/exchange/terms.ts';
import { copiesLeft } from '../../shared-engine/rules/laid/checks.ts';
import {
  type LaidEntry,
  type LaidExchange,
  laidDecision,
  laidRecord,
  layAll,
} from '../../shared-engine/rules/laid/laid-exchange.ts';
import { bagOf, countOf, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { choiceAt } from '../../shared-engine/rules/view/pending-decision.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { analystOf } from '../kit/analysts.ts';
import { houseKernel } from '../kit/reviews.ts';
import { openedBy, playOn } from '../kit/rounds.ts';

const WAYS: readonly Partial<Terms>[] = [
  {},
  { secondCharleston: 'always' },
  { secondCharleston: 'none', courtesy: 'none' },
  { blindPasses: false },
];

function playedRecord(n: number, seat: Seat): SeatRecord {
  const name = `laid ${n}`;
  const { round } = playOn(openedBy(WAYS[n % WAYS.length]!, name, SEATS[n % 4]!), stream(name, 'choices'));
  return seatView(round, seat).record;
}

/** What somebody at that table would lay in after the rack. */
function entriesOf({ seat, steps }: SeatRecord): LaidEntry[] {
  return steps.flatMap((step): LaidEntry[] => {
    const choice = choiceAt(step, seat);
    if (choice === null) return [];
    return [{ kind: 'choice', choice }, outcomeOf(step, seat)];
  });
}

function outcomeOf(step: SeatRecord['steps'][number], seat: Seat): LaidEntry {
  switch (step.kind) {
    case 'move':
      return { kind: 'arrival', tiles: step.received, blind: step.blind };
    case 'vote':
      return { kind: 'votes', stopped: SEATS.filter((one) => one !== seat && !step.go[one]) };
    case 'ask':
      return { kind: 'asks', asked: step.asked };
  }
}

function laidIn(tiles: readonly Face[], entries: readonly LaidEntry[], dealer: Seat = 0): LaidExchange {
  const result = layAll({ seat: 0, dealer, terms: STANDARD_TERMS.alone }, tiles, entries);
  if (!result.ok) throw new Error(result.message);
  return result.exchange;
}

const RACK = [
  'bam-1',
  'bam-1',
  'bam-2',
  'bam-3',
  'crak-4',
  'crak-5',
  'crak-6',
  'dot-7',
  'dot-8',
  'dot-9',
] as const;
const THIRTEEN: readonly Face[] = [...RACK, 'east', 'flower', 'joker'];
const FIRST_PASS: LaidEntry = {
  kind: 'choice',
  choice: { kind: 'pass', step: 'first-right', tiles: ['bam-3', 'dot-9', 'east'], blind: 0 },
};
const arrival = (...tiles: readonly Face[]): LaidEntry => ({ kind: 'arrival', tiles, blind: [0, 0, 0, 0] });

function problemOf(tiles: readonly Face[], ...entries: readonly LaidEntry[]) {
  const result = layAll({ seat: 0, dealer: 1, terms: STANDARD_TERMS.alone }, tiles, entries);
  return result.ok ? null : { code: result.code, tile: result.tile, message: result.message };
}

describe('an exchange laid in', () => {
  test('R1 R4 of 40 rounds played at random gives the record that the round gave', () => {
    for (let n = 0; n < 40; n++) {
      const seat = SEATS[(n >> 2) % 4]!;
      const record = playedRecord(n, seat);
      const table = { seat, dealer: record.dealer, terms: record.terms };
      const result = layAll(table, record.start, entriesOf(record));
      if (!result.ok) throw new Error(`${n}: ${result.message}`);
      const own = record.steps.filter((step) => choiceAt(step, seat) !== null);
      expect(laidRecord(result.exchange).steps.map((step) => ({ ...step, by: null }))).toEqual(
        own.map((step) => ({ ...step, by: null })),
      );
      expect(result.exchange.stage.phase).toBe('closed');
      expect(sizeOf(result.exchange.rack)).toBe(record.start.length);
    }
  });

  test('R5 gets the same review and the same deep judgement as the round, byte for byte', () => {
    const record = playedRecord(5, 2);
    const result = layAll(
      { seat: 2, dealer: record.dealer, terms: record.terms },
      record.start,
      entriesOf(record),
    );
    if (!result.ok) throw new Error(result.message);
    const laid = laidRecord(result.exchange);
    expect(JSON.stringify(reviewRound(laid, houseKernel))).toBe(
      JSON.stringify(reviewRound(record, houseKernel)),
    );
    const judged = (of: SeatRecord) =>
      JSON.stringify(
        analyzeDecision(analystOf(houseKernel.card), of, decisionsIn(of).length - 1, {
          budget: SHALLOW_BUDGET,
        }),
      );
    expect(judged(laid)).toBe(judged(record));
  });

  test('R1 goes back one entry when the last is left out', () => {
    const one = laidIn(THIRTEEN, [FIRST_PASS], 1);
    expect(one.chosen).toEqual(FIRST_PASS.kind === 'choice' && FIRST_PASS.choice);
    expect(laidDecision(one)).toBeNull();
    const none = laidIn(THIRTEEN, [], 1);
    expect(laidDecision(none)).toMatchObject({ kind: 'pass', step: 'first-right', count: 3 });
    const two = laidIn(THIRTEEN, [FIRST_PASS, arrival('dot-1', 'dot-2', 'west')], 1);
    expect(laidDecision(two)).toMatchObject({ step: 'first-across' });
    expect(facesOf(two.rack)).toContain('west');
  });

  test.each([
    ['one tile short', THIRTEEN.slice(1), 'wrong-rack-size', null, 'Lay one tile more.'],
    ['two too many', [...THIRTEEN, 'west', 'west'], 'wrong-rack-size', null, 'Take 2 tiles away.'],
    [
      'five of a kind',
      [...THIRTEEN.slice(4), 'north', 'north', 'north', 'north', 'north'],
      'too-many-copies',
      'north',
      'There are 4 of this tile in the set, and here are 5.',
    ],
  ] as const)('R2 rejects a rack with %s in words, at the tile', (_, tiles, code, tile, message) => {
    expect(problemOf(tiles as readonly Face[])).toEqual({ code, tile, message });
  });

  test.each([
    ['a joker', arrival('dot-1', 'dot-2', 'joker'), 'joker-arrived', 'joker'],
    ['two tiles for three', arrival('dot-1', 'dot-2'), 'wrong-arrival-size', null],
    [
      'a blind pass that nobody chose',
      { kind: 'arrival', tiles: [], blind: [1, 0, 0, 0] },
      'wrong-blind',
      null,
    ],
    ['votes in a pass', { kind: 'votes', stopped: [] }, 'not-now', null],
  ] as const)('R3 rejects %s after a pass', (_, entry, code, tile) => {
    expect(problemOf(THIRTEEN, FIRST_PASS, entry as LaidEntry)).toMatchObject({ code, tile });
  });

  test('R3 lets a tile come back, and no fifth of a kind arrive', () => {
    expect(problemOf(THIRTEEN, FIRST_PASS, arrival('bam-3', 'dot-9', 'east'))).toBeNull();
    const passTwos: LaidEntry = {
      kind: 'choice',
      choice: { kind: 'pass', step: 'first-right', tiles: ['bam-2', 'bam-3', 'crak-4'], blind: 0 },
    };
    expect(problemOf(THIRTEEN, passTwos, arrival('bam-1', 'bam-1', 'bam-1'))).toMatchObject({
      code: 'too-many-copies',
      tile: 'bam-1',
    });
  });

  test('R4 rejects what a round would: a joker passed, a tile not held, a choice made twice', () => {
    const pass = (...tiles: readonly Face[]): LaidEntry => ({
      kind: 'choice',
      choice: { kind: 'pass', step: 'first-right', tiles, blind: 0 },
    });
    expect(problemOf(THIRTEEN, pass('joker', 'bam-1', 'bam-2'))).toMatchObject({ code: 'joker-in-pass' });
    expect(problemOf(THIRTEEN, pass('west', 'bam-1', 'bam-2'))).toMatchObject({ code: 'tile-not-held' });
    expect(problemOf(THIRTEEN, FIRST_PASS, FIRST_PASS)).toMatchObject({ code: 'already-answered' });
  });

  test('R2 knows how many more of each tile can be laid', () => {
    const left = copiesLeft(bagOf(THIRTEEN));
    expect([countOf(left, 'bam-1'), countOf(left, 'joker'), countOf(left, 'west')]).toEqual([2, 7, 4]);
  });
});
