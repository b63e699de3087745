// The coach: what it says before a choice is so, names no tile that is not held, and agrees with the review afterwards.
import { describe, expect, test } from 'vitest';
import { finalRack, recordWithAnswer } from '../../shared-engine/analysis/belief/situation.ts';
import {
  answerOf,
  type CoachedRack,
  coachedSentences,
  coachingFor,
  firstLook,
  nextCoachStep,
} from '../../shared-engine/analysis/coach/coach.ts';
import { likeliestHands, SPOKEN_OF, wants } from '../../shared-engine/analysis/coach/likeliest-hands.ts';
import { reachOf } from '../../shared-engine/analysis/coach/reach.ts';
import { SHALLOW_BUDGET } from '../../shared-engine/analysis/comparison/budget.ts';
import type { Finalist } from '../../shared-engine/analysis/review/analysis.ts';
import { analyzeDecision, decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { tileName } from '../../shared-engine/analysis/review/sentences/tiles.ts';
import { tilesToGo } from '../../shared-engine/kernels/tiles-to-go/reference.ts';
import type { PendingDecision } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { bagOf, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { FACES, type Face, faceIndex } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord, SeatStep } from '../../shared-engine/rules/view/record.ts';
import { analystOf } from '../kit/analysts.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
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

function rackOf(record: SeatRecord): CoachedRack {
  return { record, card, reach: reachOf(card, finalRack(record), []) };
}

function judged(record: SeatRecord, answer: Parameters<typeof recordWithAnswer>[1]) {
  const whole = recordWithAnswer(record, answer, 'player');
  const budget = SHALLOW_BUDGET;
  return analyzeDecision(analystOf(card), whole, decisionsIn(whole).length - 1, { budget });
}

/** What it names, asked as the page asks. */
function coached(record: SeatRecord, decision: PendingDecision): Finalist {
  const analyses = [judged(record, firstLook(record, decision, houseKernel))];
  for (;;) {
    const { kind, choice } = nextCoachStep(analyses);
    if (kind === 'name') return choice;
    analyses.push(judged(record, answerOf(decision, choice)));
  }
}

describe('the coach', () => {
  test('names in 48 situations only tiles that are held or that came, and has a word for every step', () => {
    const byName = new Map(FACES.map((face) => [tileName(face), face]));
    for (let n = 0; n < 48; n++) {
      const { record, rack } = atSomePass(n);
      const coaching = coachingFor(rackOf(record));
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

  test('speaks of the ten patterns that are reached most often, each in its nearest way by the definition of tiles to go', () => {
    for (let n = 0; n < 3; n++) {
      const { record, rack } = atSomePass(n);
      const { reach } = rackOf(record);
      const bag = bagOf(rack);
      const likeliest = likeliestHands(card, bag, reach);
      expect(likeliest).toHaveLength(SPOKEN_OF);
      const rates = likeliest.map(({ hand }) => reach[hand.pattern]!.rate);
      expect(rates).toEqual(rates.toSorted((a, b) => b - a));
      const others = reach.filter((_, place) => !likeliest.some(({ hand }) => hand.pattern === place));
      expect(Math.max(...others.map(({ rate }) => rate))).toBeLessThanOrEqual(rates.at(-1)!);
      for (const { hand, toGo } of likeliest) {
        const ways = card.hands.filter(({ pattern }) => pattern === hand.pattern);
        expect(toGo).toBe(Math.min(...ways.map((way) => tilesToGo(way, bag))));
        expect(tilesToGo(hand, bag)).toBe(toGo);
      }
    }
  });

  test('counts how many of those hands have a place for a tile', () => {
    const { rack, record } = atSomePass(3);
    const near = likeliestHands(card, bagOf(rack), rackOf(record).reach);
    const unused = [...new Set(rack)].filter(
      (face) => face !== 'joker' && near.every(({ hand }) => !wants(hand, faceIndex(face))),
    );
    const said = coachingFor(rackOf(record)).serves.find((sentence) => sentence.startsWith('None of those'));
    expect(unused.map(tileName).every((name) => said?.includes(name))).toBe(true);
  });

  test('sees pairs, jokers, a suit, a row, like numbers and the tile that East has more', () => {
    const start: Face[] = [
      ...(['bam-1', 'bam-2', 'bam-3', 'bam-4', 'bam-4', 'bam-7', 'crak-4', 'dot-4'] as const),
      ...(['flower', 'flower', 'joker', 'east', 'red'] as const),
    ];
    expect(coachingFor(rackOf(startOnly(start))).standsOut).toEqual([
      'You hold a pair of 4 bam and a pair of flowers.',
      'You have a joker.',
      '6 of your 13 tiles are bam.',
      '1, 2, 3 and 4 bam are in a row.',
      'You hold 4 tiles of number 4, across suits.',
    ]);
    const east = coachingFor(rackOf({ ...startOnly([...start, 'west']), dealer: 0 })).standsOut;
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
    expect(coachingFor(rackOf(startOnly(bare))).standsOut).toEqual([
      'Nothing stands out: no pair, no joker and no long row.',
    ]);
  });

  test('names a pass that the review afterwards does not call costly', () => {
    const { record, decision } = atSomePass(2);
    if (decision?.kind !== 'pass') throw new Error('no pass is open');
    const pass = coached(record, decision);
    const { tiles } = pass;
    const said = coachedSentences(decision, rackOf(record), pass);
    expect(said[0]).toMatch(/^We would pass /);
    expect(said[1]).toMatch(
      /^Of those 10 hands, (none|one|two|three|four|five|six|seven|eight|nine|ten) (has|have) a place for [^,]+(, .+)?( and .+)?\.$/,
    );
    expect(said.at(-1)).toBe(
      'The line of wins in your review is about club players, so it usually lies higher.',
    );
    expect(said.at(-2)).toMatch(
      /^From there, against fairly strong players, you would win about \d+ in 100 games\.$/,
    );
    expect(judged(record, answerOf(decision, pass)).verdict).not.toBe('costly');
    expect(facesOf(bagOf(tiles))).toHaveLength(decision.count);
  });

  test('names a pass that the review compares with whatever else is passed', () => {
    for (const n of [0, 1, 2]) {
      const { record, rack, decision } = atSomePass(n);
      if (decision?.kind !== 'pass') throw new Error('no pass is open');
      const named = coached(record, decision);
      const passable = rack.filter((face) => face !== 'joker');
      for (const start of [0, 4, 8]) {
        const tiles = passable.slice(start, start + decision.count);
        const { finalists } = judged(record, answerOf(decision, { tiles, number: null }));
        expect(finalists.map((one) => one.tiles.join())).toContain(named.tiles.join());
      }
    }
  });

  test('judges another pass before it names one that no search has picked', () => {
    const analysis = sampleDeepAnalysis('best');
    const [own, other] = [['bam-1'], ['bam-2']] as const;
    const made = (tiles: readonly Face[], against: readonly Face[]) => ({
      ...analysis,
      finalists: [tiles, against].map((each) => ({ ...analysis.finalists[0]!, tiles: each, number: null })),
      played: 0,
      bestAlternative: 1,
    });
    const first = made(own, other);
    expect(nextCoachStep([first])).toMatchObject({ kind: 'judge', choice: { tiles: other } });
    // The search for the other one has picked it as well.
    expect(nextCoachStep([first, made(other, own)])).toMatchObject({ kind: 'name', choice: { tiles: own } });
    // It has not: the other one is named, of which nothing is better either.
    const third = made(other, ['bam-3']);
    expect(nextCoachStep([first, third])).toMatchObject({ kind: 'name', choice: { tiles: other } });
    // None is picked and none is behind: after four the first is named.
    const lone = made(own, other);
    const behind = { ...made(other, ['bam-3']), verdict: 'costly' } as const;
    expect(nextCoachStep([lone, behind, behind, behind])).toMatchObject({
      kind: 'name',
      choice: { tiles: own },
    });
  });

  test('names a vote and a courtesy number as well, each of which the review afterwards does not call costly', () => {
    const { record } = atSomePass(3);
    for (const decision of [
      { kind: 'vote', step: 'vote' },
      { kind: 'ask', step: 'courtesy-ask' },
    ] as const) {
      const open = { ...record, steps: [...record.steps, ...(decision.kind === 'ask' ? [STOPPED] : [])] };
      const choice = coached(open, decision);
      expect(coachedSentences(decision, rackOf(open), choice)[0]).toMatch(
        decision.kind === 'vote' ? /^We would (continue|stop)\.$/ : /^We would ask for [0-3]\.$/,
      );
      expect(judged(open, answerOf(decision, choice)).verdict).not.toBe('costly');
    }
  });
});
