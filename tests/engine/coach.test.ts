// The coach: what it says before a choice is so, names no tile that is not held, and agrees with the review afterwards.
import { describe, expect, test } from 'vitest';
import { recordWithAnswer } from '../../shared-engine/analysis/belief/situation.ts';
import {
  answerOf,
  coachedChoice,
  coachedSentences,
  coachingFor,
  firstLook,
} from '../../shared-engine/analysis/coach/coach.ts';
import { nearestHands, SPOKEN_OF, wants } from '../../shared-engine/analysis/coach/nearest-hands.ts';
import { SHALLOW_BUDGET } from '../../shared-engine/analysis/comparison/budget.ts';
import { analyzeDecision, decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { tileName } from '../../shared-engine/analysis/review/sentences/tiles.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import { bagOf, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face, faceIndex } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord, SeatStep } from '../../shared-engine/rules/view/record.ts';
import { analystOf } from '../kit/analysts.ts';
import { atSomePass } from '../kit/pass-situations.ts';
import { houseKernel } from '../kit/reviews.ts';

const { card } = houseKernel;

const startOnly = (start: readonly Face[]): SeatRecord => ({
  ...atSomePass(0).record,
  dealer: 1,
  start,
  steps: [],
});

/** A vote after which the courtesy is next. */
const STOPPED: SeatStep = {
  kind: 'vote',
  go: [true, true, false, true],
  by: ['player', 'bot', 'bot', 'bot'],
};

function judged(record: SeatRecord, answer: Parameters<typeof recordWithAnswer>[1]) {
  const whole = recordWithAnswer(record, answer, 'player');
  const budget = SHALLOW_BUDGET;
  return analyzeDecision(analystOf(card), whole, decisionsIn(whole).length - 1, { budget });
}

describe('the coach', () => {
  test('names in 200 situations only tiles that are held or that came, and has a word for every step', () => {
    const byName = new Map(FACES.map((face) => [tileName(face), face]));
    for (let n = 0; n < 200; n++) {
      const { record, rack } = atSomePass(n);
      const coaching = coachingFor(record, card);
      const came = record.steps.flatMap((step) => (step.kind === 'move' ? step.received : []));
      for (const name of coaching.serves
        .join(' ')
        .match(/\d (?:bam|crak|dot)|(?:east|south|west|north) wind|(?:green|red) dragon|soap|flower/gi) ??
        []) {
        expect(rack).toContain(byName.get(name.toLowerCase()));
      }
      for (const name of coaching.standsOut.join(' ').match(/\d (?:bam|crak|dot)\b(?! are)/g) ?? []) {
        expect([...rack, ...came]).toContain(byName.get(name));
      }
      expect(coaching.standsOut.length).toBeGreaterThan(0);
      expect(coaching.pointsTo.length).toBeGreaterThan(1);
      // A reader who adds up what is said of the sections finds all the hands.
      const [all, ...parts] = (coaching.pointsTo[0]!.match(/\d+/g) ?? []).map(Number);
      expect(parts.reduce((sum, count) => sum + count, 0)).toBe(all);
      for (const sentence of Object.values(coaching).flat()) {
        expect(sentence.split(' ').length).toBeLessThanOrEqual(40);
        expect(sentence).toMatch(/^[A-Z0-9].*\.$/);
      }
    }
  });

  test('speaks of the ten patterns nearest to the rack, by the definition of tiles to go', () => {
    for (let n = 0; n < 12; n++) {
      const bag = bagOf(atSomePass(n).rack);
      const near = nearestHands(card, bag);
      const byPattern = card.patterns.map((_, pattern) =>
        Math.min(
          ...card.hands.filter((hand) => hand.pattern === pattern).map((hand) => tilesToGo(hand, bag)),
        ),
      );
      const expected = byPattern.toSorted((a, b) => a - b).slice(0, SPOKEN_OF);
      expect(near.map(({ toGo }) => toGo)).toEqual(expected);
      expect(near.every(({ hand, toGo }) => tilesToGo(hand, bag) === toGo)).toBe(true);
    }
  });

  test('counts how many of those hands have a place for a tile', () => {
    const { rack, record } = atSomePass(3);
    const near = nearestHands(card, bagOf(rack));
    const unused = [...new Set(rack)].filter(
      (face) => face !== 'joker' && near.every(({ hand }) => !wants(hand, faceIndex(face))),
    );
    const said = coachingFor(record, card).serves.find((sentence) => sentence.startsWith('None of those'));
    expect(unused.map(tileName).every((name) => said?.includes(name))).toBe(true);
  });

  test('sees pairs, jokers, a suit, a row, like numbers and the tile that East has more', () => {
    const start: Face[] = [
      ...(['bam-1', 'bam-2', 'bam-3', 'bam-4', 'bam-4', 'bam-7', 'crak-4', 'dot-4'] as const),
      ...(['flower', 'flower', 'joker', 'east', 'red'] as const),
    ];
    expect(coachingFor(startOnly(start), card).standsOut).toEqual([
      'You hold a pair of 4 bam and a pair of flowers.',
      'You have a joker.',
      '6 of your 13 tiles are bam.',
      '1, 2, 3 and 4 bam are in a row.',
      'You hold 4 tiles of number 4, across suits.',
    ]);
    const east = coachingFor({ ...startOnly([...start, 'west']), dealer: 0 }, card).standsOut;
    expect(east.at(-1)).toBe('As East you hold one tile more than the others.');
    const bare: Face[] = [
      'bam-1',
      'bam-3',
      'bam-6',
      'crak-2',
      'crak-5',
      'crak-8',
      'dot-4',
      'dot-7',
      'dot-9',
      'east',
      'west',
      'red',
      'white',
    ];
    expect(coachingFor(startOnly(bare), card).standsOut).toEqual([
      'Nothing stands out: no pair, no joker and no long row.',
    ]);
  });

  test('names a pass that the review afterwards does not call costly', () => {
    const { record, decision } = atSomePass(2);
    if (decision?.kind !== 'pass') throw new Error('no pass is open');
    const first = firstLook(record, decision, houseKernel);
    const pass = coachedChoice(judged(record, first));
    const { tiles } = pass;
    const said = coachedSentences(decision, record, card, pass);
    expect(said[0]).toMatch(/^We would pass /);
    expect(said.at(-1)).toMatch(
      /^From there, against fairly strong players, you would win about \d+ in 100 games\.$/,
    );
    expect(judged(record, answerOf(decision, pass)).verdict).not.toBe('costly');
    expect(facesOf(bagOf(tiles))).toHaveLength(decision.count);
  });

  test('names a vote and a courtesy number as well, each of which the review afterwards does not call costly', () => {
    const { record } = atSomePass(3);
    for (const decision of [
      { kind: 'vote', step: 'vote' },
      { kind: 'ask', step: 'courtesy-ask' },
    ] as const) {
      const open = { ...record, steps: [...record.steps, ...(decision.kind === 'ask' ? [STOPPED] : [])] };
      const choice = coachedChoice(judged(open, firstLook(open, decision, houseKernel)));
      expect(coachedSentences(decision, open, card, choice)[0]).toMatch(
        decision.kind === 'vote' ? /^We would (continue|stop)\.$/ : /^We would ask for [0-3]\.$/,
      );
      expect(judged(open, answerOf(decision, choice)).verdict).not.toBe('costly');
    }
  });
});
