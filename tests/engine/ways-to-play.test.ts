// The ways to play, all combinations of them: what steps a round has, what may be chosen, and what is refused.
import { describe, expect, test } from 'vitest';
import { offeredChoices } from '../../shared-engine/analysis/belief/situation.ts';
import { situationSeeds } from '../../shared-engine/analysis/comparison/situation-seed.ts';
import { decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { reviewRound } from '../../shared-engine/analysis/review/review-round.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { finishRound } from '../../shared-engine/bots/finish-round.ts';
import { commitmentOf } from '../../shared-engine/rules/deal/commitment.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { nextDealer } from '../../shared-engine/rules/deal/next-dealer.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { stepOfOutcome } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { checkRound } from '../../shared-engine/rules/exchange/recompute.ts';
import { hasStep, type Step } from '../../shared-engine/rules/exchange/schedule.ts';
import {
  type AskedTerms,
  COURTESY_WAYS,
  type ExchangeTerms,
  type Mode,
  SECOND_CHARLESTON_WAYS,
  STANDARD_TERMS,
  type Terms,
  termsFrom,
} from '../../shared-engine/rules/exchange/terms.ts';
import { addTo, EMPTY_BAG, FULL_SET, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { seatView, viewFor } from '../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../kit/reviews.ts';
import { apply, openedBy, type Played, playOn, rejectionOf } from '../kit/rounds.ts';

const COMBINATIONS: readonly ExchangeTerms[] = SECOND_CHARLESTON_WAYS.flatMap((secondCharleston) =>
  COURTESY_WAYS.flatMap((courtesy) =>
    [true, false].map((blindPasses) => ({ secondCharleston, courtesy, blindPasses })),
  ),
);
const called = (terms: ExchangeTerms): string => Object.values(terms).join(', ');
const ROUNDS = Array.from({ length: 12 }, (_, n) => `ways ${n}`);

function played(terms: Partial<Terms>, name: string): Played {
  const dealer = SEATS[stream(name, 'dealer').below(4)]!;
  return playOn(openedBy(terms, name, dealer), stream(name, 'players'));
}

function stepsOf({ round }: Played): readonly Step[] {
  return round.resolved.map(stepOfOutcome);
}

describe.each(COMBINATIONS.map((terms) => [called(terms), terms] as const))('played %s', (_, terms) => {
  const rounds = ROUNDS.map((name) => played({ ...terms, revealRacks: true }, name));

  test('S1 W2 W3 W4 every rack keeps its size and its jokers, and racks and wall are the whole set', () => {
    for (const { round } of rounds) {
      const { racks, wall } = dealTiles(round.deal);
      expect(round.phase).toBe('closed');
      expect(round.racks.map(sizeOf)).toEqual(racks.map(sizeOf));
      expect(round.racks.map((rack) => rack[35])).toEqual(racks.map((rack) => rack[35]));
      const all = round.racks.reduce((sum, rack) => addTo(sum, facesOf(rack)), addTo(EMPTY_BAG, wall));
      expect(all).toEqual(FULL_SET);
    }
  });

  test('E2 W2 W3 W4 replaying the log as it is stored gives the same round', () => {
    for (const { round, log } of rounds) {
      expect(replay(JSON.parse(JSON.stringify(log)))).toEqual(JSON.parse(JSON.stringify(round)));
    }
  });

  test('W2 W4 a round has the steps that its terms have, in their order', () => {
    const first = ['first-right', 'first-across', 'first-left'];
    const second = ['second-left', 'second-across', 'second-right'];
    const courtesy = [[], ['courtesy-ask'], ['courtesy-ask', 'courtesy-pass']];
    for (const one of rounds) {
      const steps = stepsOf(one);
      expect(steps.every((step) => hasStep(step, terms))).toBe(true);
      const ways = { 'by-vote': [['vote'], ['vote', ...second]], always: [second], none: [[]] };
      const ends = terms.courtesy === 'none' ? [[]] : courtesy.slice(1);
      const possible = ways[terms.secondCharleston].flatMap((middle) =>
        ends.map((end) => [...first, ...middle, ...end].join()),
      );
      expect(possible).toContain(steps.join());
    }
  });

  test('W3 blind passes are made where they are allowed and rejected where they are not', () => {
    const blind = rounds.some(({ round }) =>
      round.resolved.some((step) => step.kind === 'move' && step.blind.some((count) => count > 0)),
    );
    expect(blind).toBe(terms.blindPasses);
    const atLeft = playOn(openedBy(terms, 'blind'), stream('blind', 'players'), (round) => {
      return round.phase === 'passing' && round.step === 'first-left';
    });
    const command = { kind: 'pass', step: 'first-left', tiles: [], blind: 3, seat: 0, by: 'player' } as const;
    if (terms.blindPasses) expect(apply(atLeft, command).log.at(-1)?.kind).toBe('submitted');
    else expect(rejectionOf(atLeft.round, command).code).toBe('blind-not-allowed');
  });

  test('Z2 W2 W3 W4 an opened round is checked by its terms, and by other terms it is not the one committed to', () => {
    for (const { round } of rounds.slice(0, 3)) {
      const { record, stage } = seatView(round, 1);
      if (stage.phase !== 'closed' || !stage.opened || !stage.racks) throw new Error('not opened');
      const claim = {
        ...stage.opened,
        roundId: round.roundId,
        dealer: record.dealer,
        terms: round.terms,
        commitment: round.commitment!,
        racks: stage.racks,
        seen: {
          seat: record.seat,
          rack: record.start,
          moves: record.steps.filter((step) => step.kind === 'move'),
        },
      };
      expect(checkRound(claim)).toEqual({ ok: true });
      const other = { ...round.terms, blindPasses: !terms.blindPasses };
      expect(checkRound({ ...claim, terms: other })).toMatchObject({ reason: 'wrong-commitment' });
      const commitment = commitmentOf(round.deal, {
        ...claim,
        terms: { ...other, secondCharleston: 'none' },
      });
      const recommitted = checkRound({
        ...claim,
        commitment: commitment!,
        terms: { ...other, secondCharleston: 'none' },
      });
      const fits = !claim.moves.some(
        ({ step, blind }) =>
          step.startsWith('second') || (terms.blindPasses && blind.some((count) => count > 0)),
      );
      expect(recommitted.ok).toBe(fits);
    }
  });

  test('W2 W3 W4 bots play by the terms, and the review knows no choice that was not offered', () => {
    const dealt = openedBy(terms, 'bots', 2).round;
    const { round } = finishRound(dealt, (view, random) => chooseFor('casual', view, houseKernel, random));
    const { record } = seatView(round, 0);
    const choices = reviewRound(record, houseKernel).choices;
    expect(choices.length).toBe(decisionsIn(record).length);
    expect(choices.some(({ kind }) => kind === 'blind')).toBe(terms.blindPasses);
    expect(choices.some(({ kind }) => kind === 'vote')).toBe(terms.secondCharleston === 'by-vote');
    expect(choices.some(({ kind }) => kind === 'ask')).toBe(terms.courtesy === 'by-asking');
    expect(offeredChoices(record)[0]!.situation.terms).toEqual(terms);
  });
});

test('W2 W3 W4 what an analysis draws depends on the ways to play as well as on what was known', () => {
  const { round } = played({}, 'seeds');
  const { situation } = offeredChoices(seatView(round, 0).record)[0]!;
  const seeds = COMBINATIONS.map((terms) => situationSeeds('card', { ...situation, terms }));
  expect(new Set(seeds.map(({ deals }) => deals)).size).toBe(COMBINATIONS.length);
  expect(new Set(seeds.map(({ noise }) => noise)).size).toBe(COMBINATIONS.length);
});

describe('before the deal', () => {
  test('W1 East goes in turn, is always the player, or passes over the player', () => {
    for (const player of SEATS) {
      for (let n = 0; n < 20; n++) {
        const first = (whoIsEast: Terms['whoIsEast']) =>
          nextDealer({ whoIsEast, player, last: null }, stream(`${n}`, 'first dealer'));
        expect(first('always')).toBe(player);
        expect(first('never')).not.toBe(player);
        expect(SEATS).toContain(first('in-turn'));
      }
      const next = (whoIsEast: Terms['whoIsEast'], last: Seat) =>
        nextDealer({ whoIsEast, player, last }, stream('none', 'first dealer'));
      for (const last of SEATS) {
        expect(next('in-turn', last)).toBe((last + 1) % 4);
        expect(next('always', last)).toBe(player);
        expect(next('never', last)).toBe((last + 1) % 4 === player ? (last + 2) % 4 : (last + 1) % 4);
      }
    }
  });

  test('W1 W5 W6 what is not named is as usual, by who sits at the table', () => {
    const termsOf = (asked: AskedTerms, table: Mode) => {
      const agreed = termsFrom(asked, table);
      if (!agreed.ok) throw new Error(agreed.message);
      return agreed.terms;
    };
    expect(termsOf({}, 'friends')).toMatchObject({ cardHelp: 'printed', passLog: false, revealRacks: false });
    expect(termsOf({}, 'alone')).toMatchObject({ cardHelp: 'nearest', passLog: true, revealRacks: true });
    expect(termsOf({ players: 4, blankTiles: 0 }, 'friends')).toEqual(STANDARD_TERMS.friends);
    expect(termsOf({ whoIsEast: 'never', courtesy: 'none' }, 'alone')).toEqual({
      ...STANDARD_TERMS.alone,
      whoIsEast: 'never',
      courtesy: 'none',
    });
  });

  test.each<[AskedTerms, Mode, string, RegExp]>([
    [{ players: 3 }, 'friends', 'not-four-players', /^Four seats play here/],
    [{ blankTiles: 6 }, 'alone', 'blank-tiles', /no blank ones/],
    [{ courtesy: 'pot' }, 'friends', 'pot-for-courtesy', /^There is no pot here/],
    [{ whoIsEast: 'always' }, 'friends', 'east-not-in-turn', /East goes in turn/],
  ])(
    'W1 W4 a set or a way that is not played here is rejected in words: %j with %s',
    (asked, table, code, words) => {
      const agreed = termsFrom(asked, table);
      expect(agreed).toMatchObject({ ok: false, code });
      expect(agreed.ok ? '' : agreed.message).toMatch(words);
    },
  );

  test('W6 a round records its help, for everybody to see, and what is committed to depends on it', () => {
    const one = openedBy({ cardHelp: 'none', passLog: false }, 'help').round;
    const other = openedBy({ cardHelp: 'nearest', passLog: true }, 'help').round;
    expect(one.commitment).not.toBe(other.commitment);
    expect(viewFor(one, { kind: 'spectator' }).terms).toEqual(one.terms);
    expect(seatView(other, 3).record.terms).toMatchObject({ cardHelp: 'nearest', passLog: true });
  });
});
