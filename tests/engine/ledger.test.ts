// Luck and choices of a round: parts that add up, stand-ins and classes apart, and what is said of them.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { closingSituation } from '../../shared-engine/analysis/belief/situation.ts';
import { createAnalyst } from '../../shared-engine/analysis/comparison/analyze.ts';
import { longestSuit, USUAL } from '../../shared-engine/analysis/ledger/longest-suit.ts';
import { neighborSuits } from '../../shared-engine/analysis/ledger/neighbor-suits.ts';
import { ledgerOf } from '../../shared-engine/analysis/ledger/round-ledger.ts';
import { type LedgerSums, settle, type ValuedChoice } from '../../shared-engine/analysis/ledger/settle.ts';
import { withLedger } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { ledgerSentences, type ToldBeside } from '../../shared-engine/analysis/review/sentences/ledger.ts';
import { DEAL_BYTES } from '../../shared-engine/analysis/rollouts/batch.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { NO_SIMD } from '../../shared-engine/kernels/simd/module.ts';
import {
  mergedSummary,
  roundSummarySchema,
  storedLedger,
} from '../../shared-engine/practice/stored-round.ts';
import { reviewSchema } from '../../shared-engine/protocol/review.ts';
import { DIRECTIONS, neighbor, SEATS, type Seat, withSeat } from '../../shared-engine/rules/deal/seat.ts';
import type { Actor } from '../../shared-engine/rules/exchange/round.ts';
import { bagOf, FULL_SET } from '../../shared-engine/rules/tiles/bag.ts';
import { FACE_COUNT, type Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatMove, SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { analystOf } from '../kit/analysts.ts';
import { houseKernel, records } from '../kit/reviews.ts';
import { storedRound } from '../kit/stored-rounds.ts';
import { ledgerRound } from '../prove/analysis/ledger-rounds.ts';

const analyst = analystOf(houseCard());
const BATCHES = 8;
const RECORDS = records('ledger', 4);
const LEDGERS = RECORDS.map((record) => ledgerOf(analyst, record, BATCHES));
/** The beginning of the first of them, which takes less time. */
const SHORT: SeatRecord = { ...RECORDS[0]!, steps: RECORDS[0]!.steps.slice(0, 2) };
const SHORT_LEDGER = ledgerOf(analyst, SHORT, BATCHES);

const inThousandths = (value: number): number => Math.round(1000 * value);
const sum = (values: readonly number[]): number =>
  values.reduce((total, value) => total + inThousandths(value), 0);

function partsOf({ start, luck, choices, standIns, jumps }: LedgerSums): readonly number[] {
  return [start.value, luck.value, choices.value, standIns, jumps];
}

describe('the ledger of a round', () => {
  test('has an entry for every choice of the review, and its parts add up to the thousandth', () => {
    for (const [n, ledger] of LEDGERS.entries()) {
      const { choices } = reviewRound(RECORDS[n]!, houseKernel);
      const named = (all: readonly { kind: string; step: string }[]) =>
        all.map(({ kind, step }) => `${kind} ${step}`);
      expect(named(ledger.entries)).toEqual(named(choices));
      expect(sum(partsOf(ledger))).toBe(inThousandths(ledger.close.value));
      const entries = ledger.entries.flatMap(({ choice, after }) => [choice, after]);
      expect(sum([ledger.start.value, ...entries])).toBe(inThousandths(ledger.close.value));
      expect([ledger.standIns, ledger.jumps]).toEqual([0, 0]);
    }
  });

  test('tells one number for an average deal in each turn after East, whoever deals', () => {
    const [seat, dealer] = [SHORT.seat, SHORT.dealer].map((one) => neighbor(one, 'right')) as [Seat, Seat];
    const { average } = ledgerOf(analyst, { ...SHORT, seat, dealer }, BATCHES);
    expect([average, SHORT_LEDGER.average]).toEqual([expect.any(Number), average]);
  });

  test('has for each neighbor and suit how likely it is the longest, nearer to the usual share than the deals say', () => {
    const { seat } = SHORT;
    const situation = closingSituation(SHORT);
    const range = { first: 0, batches: BATCHES };
    const deals = analyst.belief.sampledDeals(situation, 3, range);
    const found = neighborSuits(analyst.belief, situation, 3, range);
    for (const [n, { toward, longest }] of found.entries()) {
      expect(toward).toBe(DIRECTIONS[n]);
      const at = ((seat + n + 1) % 4) * FACE_COUNT;
      const hits = [0, 0, 0];
      for (let deal = 0; deal < deals.length; deal += DEAL_BYTES) {
        const suit = longestSuit(deals, deal + at);
        if (suit !== null) hits[suit]!++;
      }
      for (const [suit, share] of Object.values(longest).entries()) {
        const counted = hits[suit]! / (deals.length / DEAL_BYTES) - USUAL;
        expect(Math.sign(share - USUAL)).toBe(Math.sign(counted));
        expect(Math.abs(share - USUAL)).toBeLessThan(Math.abs(counted));
      }
    }
    for (const { neighbors } of LEDGERS) expect(neighbors).toHaveLength(3);
    const rack = (...faces: readonly Face[]) => bagOf(faces);
    expect(longestSuit(rack('bam-1', 'bam-9', 'dot-3', 'joker', 'flower', 'flower'), 0)).toBe(0);
    expect(longestSuit(rack('bam-1', 'dot-3', 'east', 'east'), 0)).toBeNull();
  });

  test('has no luck between how many are passed blind and which tiles', () => {
    const between = LEDGERS.flatMap(({ entries }) =>
      entries.filter(({ kind }, n) => kind === 'blind' && entries[n + 1]?.kind === 'pass'),
    );
    expect(between.length).toBeGreaterThan(2);
    // What rounding leaves is luck.
    for (const { after } of between) expect(Math.abs(after)).toBeLessThan(0.0015);
  });

  test('charges nothing to a seat that plays as the steady player does', () => {
    const { record } = seatView(ledgerRound('steady', 0, 'rollouts', true), 0);
    const { entries, choices } = ledgerOf(analyst, record, BATCHES);
    expect(entries.map(({ choice }) => choice)).toEqual(entries.map(() => 0));
    expect(choices).toEqual({ value: 0, halfWidth: 0 });
  });

  test('has the same bytes where the host cannot run the SIMD module', () => {
    const ledger = ledgerOf(createAnalyst(houseCard(), NO_SIMD), SHORT, BATCHES);
    expect(JSON.stringify(ledger)).toBe(JSON.stringify(SHORT_LEDGER));
  });

  test('has what a stand-in chose apart, and nothing else changes', () => {
    const by = (actor: Actor) => withSeat<Actor>(['bot', 'bot', 'bot', 'bot'], SHORT.seat, actor);
    const steps = SHORT.steps.map((step, n) => ({ ...step, by: by(n === 0 ? 'stand-in' : 'player') }));
    const ledger = ledgerOf(analyst, { ...SHORT, steps }, BATCHES);
    const [first] = SHORT_LEDGER.entries;
    expect(ledger.standIns).toBe(first!.choice);
    expect(ledger.luck).toEqual(SHORT_LEDGER.luck);
    expect(sum([ledger.choices.value, ledger.standIns])).toBe(inThousandths(SHORT_LEDGER.choices.value));
  });

  test('has apart what a class brought by going on from another choice', () => {
    const [first] = SHORT.steps as [SeatMove];
    const others = SHORT.start.filter((face) => face !== 'joker' && !first.gave.includes(face)).slice(0, 3);
    const own: SeatMove = { ...first, gave: others };
    const ledger = ledgerOf(analyst, { ...SHORT, actualSteps: [own] }, BATCHES);
    const [entry, ...rest] = ledger.entries;
    expect(entry).toMatchObject({ afterBy: 'class', after: ledger.jumps });
    expect(rest).toEqual(SHORT_LEDGER.entries.slice(1));
    expect(sum(partsOf(ledger))).toBe(inThousandths(ledger.close.value));
  });

  test('throws where there was no choice', () => {
    expect(() => ledgerOf(analyst, { ...RECORDS[0]!, steps: [] }, BATCHES)).toThrow('no choice');
  });
});

test('at the close every sampled deal has whole racks of tiles that there are, after a courtesy pass too', () => {
  const courtesy = RECORDS.filter(({ steps }) => steps.at(-1)?.kind === 'move');
  expect(courtesy.length).toBeGreaterThan(0);
  for (const record of courtesy) {
    const situation = closingSituation(record);
    const deals = analyst.belief.sampledDeals(situation, 5, { first: 0, batches: 2 });
    for (let at = 0; at < deals.length; at += DEAL_BYTES) {
      const racks = SEATS.map((seat) => deals.subarray(at + seat * FACE_COUNT, at + (seat + 1) * FACE_COUNT));
      const sizes = racks.map((rack) => rack.reduce((all, count) => all + count, 0));
      expect(sizes).toEqual(SEATS.map((seat) => (seat === record.dealer ? 14 : 13)));
      expect([...racks[record.seat]!]).toEqual(situation.rack);
      for (const [face, copies] of FULL_SET.entries()) {
        expect(racks.reduce((all, rack) => all + rack[face]!, 0)).toBeLessThanOrEqual(copies);
      }
    }
  }
});

const wins = fc.integer({ min: -30_000, max: 60_000 }).map((value) => value / 1000);
const valued = fc
  .record({
    by: fc.constantFrom('player', 'stand-in', 'bot'),
    afterBy: fc.constantFrom('luck', 'class'),
    value: wins,
    chosen: wins,
  })
  .map(({ value, chosen, ...one }): ValuedChoice => {
    const batches = (mean: number) => Float64Array.from({ length: 8 }, (_, n) => mean + (n % 2) - 0.5);
    return { kind: 'pass', step: 'first-right', ...one, value: batches(value), chosen: batches(chosen) };
  });

describe('what is said of luck and choices', () => {
  test('adds up in whole numbers, in sentences that a reader can follow', () => {
    fc.assert(
      fc.property(fc.array(valued, { minLength: 1, maxLength: 11 }), wins, (choices, worth) => {
        const sums = settle(choices, new Float64Array(8).fill(worth), {
          average: 30,
          dealsPerBatch: 8,
        });
        expect(sum(partsOf(sums))).toBe(inThousandths(sums.close.value));
        const sentences = ledgerSentences(sums, {
          losses: [],
          unsure: [],
          worse: [],
          toGoStart: 5,
          toGoEnd: 5,
        });
        let total = 0;
        const close = sentences.findIndex((sentence) => sentence.startsWith('At the close '));
        for (const sentence of sentences.slice(0, close)) {
          if (/^Our steady player, |^Among four equal players/.test(sentence)) continue;
          const said = Number(/about (-?\d+)/.exec(sentence)?.[1] ?? 0);
          total += / cost | lowered /.test(sentence) ? -said : said;
        }
        expect(total).toBe(Number(/about (-?\d+)/.exec(sentences[close]!)![1]));
        for (const sentence of sentences) expect(sentence.split(' ').length).toBeLessThanOrEqual(25);
      }),
      { seed: 1403, numRuns: 200 },
    );
  });

  test('names the one choice that makes half of the sum, where its step does not speak against it', () => {
    const flat = (value: number) => Float64Array.of(value, value);
    const choice = { by: 'player', afterBy: 'luck', value: flat(30) } as const;
    const told = (gain: number, worse: ToldBeside['worse'] = []): string => {
      const choices = [
        { ...choice, kind: 'blind', step: 'first-left', chosen: flat(30 + gain) },
        { ...choice, kind: 'vote', step: 'vote', chosen: flat(31) },
      ] as const;
      const sums = settle(choices, flat(30), { average: null, dealsPerBatch: 8 });
      return ledgerSentences(sums, { losses: [], unsure: [], worse, toGoStart: 5, toGoEnd: 5 }).join(' ');
    };
    const blind = { kind: 'blind', step: 'first-left', told: 8 } as const;
    const named = 'the number to pass blind in the first pass to the left.';
    expect(told(10)).toContain(`One choice makes at least half of what your choices brought: ${named}`);
    // A part that is larger than the whole: that there is a rest is told as well.
    expect(told(-10, [blind])).toContain(
      `One choice alone makes more than all that your choices cost: ${named} Your other choices brought some of that back.`,
    );
    expect(told(10)).not.toContain('Your other choices');
    // Where its step tells little of that, a reader would not believe it.
    expect(told(-10, [{ ...blind, told: 4 }])).not.toContain('One choice');
    // The number of its step is another one, and two for one choice are read as an error.
    expect(told(-10, [blind])).not.toContain('about 10');
    // How good a choice was its step says, and not how unusual.
    const unusual = 'There our steady player would have chosen otherwise.';
    expect([told(10).includes(unusual), told(-10, [blind]).includes(unusual)]).toEqual([true, false]);
    expect([told(10, [blind]), told(-10), told(2)].join()).not.toContain('alone');
  });

  test('says where worth and tiles away part, and why what is told step by step does not add up to what the choices cost', () => {
    const batches = (mean: number) => Float64Array.of(mean, mean);
    const said = (
      cost: number,
      losses: readonly number[],
      toGoEnd: number,
      unsure: readonly number[] = [],
    ): string => {
      const choice = { kind: 'pass', step: 'first-right', by: 'bot', afterBy: 'luck' } as const;
      const choices = [{ ...choice, value: batches(40), chosen: batches(40 - cost) }];
      const sums = settle(choices, batches(30 - cost), { average: null, dealsPerBatch: 8 });
      return ledgerSentences(sums, { losses, unsure, worse: [], toGoStart: 7, toGoEnd }).join(' ');
    };
    expect(said(2, [2.9, 0], 7)).toBe(
      'The bot’s first tiles were worth about 40 wins in 100 games. The tiles that came and the others’ choices lowered that by about 10. The bot’s choices cost about 2 compared with our steady player’s. At the close the bot’s rack was worth about 28.',
    );
    const closer =
      'Coming closer is not all: the others mostly do so too, and jokers and pairs count as well.';
    expect(said(2, [3, 0], 5)).toContain(closer);
    expect(said(2, [3, 0], 8)).not.toContain('not all');
    expect(said(-12, [], 8)).toContain(
      'Tiles away are not all: jokers, pairs and the other racks count too.',
    );
    const sum = 'The losses told step by step';
    const best = 'measured against the best we found, which our steady player often misses.';
    expect(said(2, [25, 0], 7)).toContain(`${sum} add up to more. Each is ${best}`);
    expect(said(11, [12.9, 0], 7)).toContain(`${sum} add up to more. Each is ${best}`);
    // What rounding may make is no difference: 13 may be told of 13.4, and 14 of 13.6.
    for (const losses of [
      [12, 0],
      [8, 4],
      [6, 4],
    ])
      expect(said(11, losses, 7)).not.toContain(sum);
    expect(said(3, [4.2], 7)).toContain(`The one loss told step by step is larger. It is ${best}`);
    // Choices that cost nothing, or brought something, have losses beside the best as well.
    expect(said(-3, [1.2], 7)).toContain(`The one loss told step by step is no contradiction. It is ${best}`);
    expect(said(0, [1.4, 0], 7)).toContain(`${sum} are no contradiction. Each is ${best}`);
    expect(said(-4, [0.4, 0], 7)).toContain(`${sum} are no contradiction. Each is ${best}`);
    expect(said(9, [4, 0], 7)).toContain(
      `${sum} add up to less. For single steps we take the others for a little stronger than club players, so wins are rarer.`,
    );
    // What can't be said may be what is missing, where it can hold so much.
    const rest = `${sum} add up to less: the rest may lie in the`;
    expect(said(9, [4, 0], 7, [2.1, 3])).toContain(`${rest} steps marked Can’t say.`);
    expect(said(9, [4, 0], 7, [5])).toContain(`${rest} step marked Can’t say.`);
    expect(said(9, [4, 0], 7, [2.1, 2.8])).not.toContain(rest);
    // One number is told for what the choices cost, whatever the steps add up to.
    for (const [cost, losses] of [
      [18, [20, 7]],
      [9, [4, 0]],
      [-3, [1.2]],
    ] as const) {
      const sum = losses.reduce<number>((all, loss) => all + loss, 0);
      expect(said(cost, losses, 7)).not.toMatch(new RegExp(`about ${sum}\\b`));
    }
    // Where none is told a reader looks for what the choices cost.
    expect(said(2, [], 7)).toContain(
      'No one step shows that cost: small costs may add up. For single steps we take the others for a little stronger than club players.',
    );
    for (const cost of [0.4, -3]) expect(said(cost, [], 7)).not.toContain('step');
  });

  test('stands in the review with the ledger itself, and not before', () => {
    const review = reviewRound(RECORDS[0]!, houseKernel);
    expect([review.ledger, review.story.ledger]).toEqual([null, []]);
    const whole = withLedger(review, LEDGERS[0]!);
    expect(reviewSchema.parse(JSON.parse(JSON.stringify(whole)))).toEqual(whole);
    expect(whole.story.ledger.join(' ')).toMatch(
      /^Our steady player, a simple bot, wins about \d+ in 100 games from an average deal in this seat, against club players\. Among four equal players each wins 25 at most\. The steady player wins more, mostly because it passes better\. Your first/,
    );
    expect(whole.story.choices).toEqual(review.story.choices);
  });

  test('is stored with the round in few bytes, and kept when two devices’ rounds become one', () => {
    const ledger = storedLedger({ ledger: LEDGERS[0]! });
    expect(JSON.stringify(ledger).length).toBeLessThan(130);
    const { summary } = storedRound('stored', ledger);
    expect(roundSummarySchema.parse(summary)).toEqual(summary);
    const { ledger: _, ...without } = summary;
    expect(mergedSummary(without, summary).ledger).toEqual(ledger.ledger);
    expect(mergedSummary(summary, without).ledger).toEqual(ledger.ledger);
  });
});
