// Luck and skill of a game that can be counted out: Kuhn's poker, with its published value.
//
// H. W. Kuhn, “A simplified two-person poker”, in: Contributions to the Theory of Games I, Princeton 1950: three cards,
// one to each player, a stake of one, one bet of one; the first player loses 1/18 a game when both play their best. The
// rules, the value and the equilibrium strategies are recalled from memory. That luck is worth nothing on average,
// whatever is chosen, is the martingale argument behind luck-adjusted results in backgammon and AIVAT (Burch, Schmid,
// Moravčík, Morrill and Bowling 2018).
import { describe, expect, test } from 'vitest';
import { settle, type ValuedChoice } from '../../shared-engine/analysis/ledger/settle.ts';

const CARDS = [0, 1, 2] as const;
type Card = (typeof CARDS)[number];

/** Chance to bet, or to call after passing and being bet against, by the first player's card. */
interface Policy {
  readonly bet: readonly [number, number, number];
  readonly call: readonly [number, number, number];
}

/** The equilibrium with the most bluffing, and the second player's only one: bets after a pass, calls after a bet. */
const BEST: Policy = { bet: [1 / 3, 0, 1], call: [0, 2 / 3, 1] };
const OPPONENT: Policy = { bet: [1 / 3, 0, 1], call: [0, 1 / 3, 1] };

/** Every value of the game is a multiple of one part in so many, so that a thousandth rounds nothing. */
const SCALE = 54;

/** The showdown for this stake, from the first player's side. */
const showdown = (own: Card, other: Card, stake: number): number => (own > other ? stake : -stake);

const othersOf = (own: Card): readonly Card[] => CARDS.filter((card) => card !== own);
const meanOver = (cards: readonly Card[], of: (card: Card) => number): number =>
  cards.map(of).reduce((sum, value) => sum + value, 0) / cards.length;

/** After a bet of the first player: the second one calls or folds. */
const afterBet = (own: Card, other: Card): number => {
  const call = OPPONENT.call[other];
  return call * showdown(own, other, 2) + (1 - call);
};

/** After both passed and the second one bet, with what the first player then knows: its own card and the bet. */
function whenBet(own: Card, call: number): number {
  const others = othersOf(own);
  const weights = others.map((other) => OPPONENT.bet[other]);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const ends = others.map((other, n) => weights[n]! * showdown(own, other, 2));
  const called = ends.reduce((sum, end) => sum + end, 0) / total;
  return call * called - (1 - call);
}

/** The value of a bet, or of a pass that is followed by the policy. */
function first(own: Card, action: 'bet' | 'pass', { call }: Policy): number {
  return meanOver(othersOf(own), (other) => {
    if (action === 'bet') return afterBet(own, other);
    const bet = OPPONENT.bet[other];
    return bet * answer(own, other, call[own]) + (1 - bet) * showdown(own, other, 1);
  });
}

const answer = (own: Card, other: Card, call: number): number => call * showdown(own, other, 2) - (1 - call);

const mixed = (own: Card, policy: Policy): number =>
  policy.bet[own] * first(own, 'bet', policy) + (1 - policy.bet[own]) * first(own, 'pass', policy);

interface Game {
  readonly chance: number;
  readonly luck: number;
  readonly choices: number;
  readonly start: number;
  readonly close: number;
}

const inBatches = (value: number) => new Float64Array(8).fill(value * SCALE);
const choice = (value: number, chosen: number): ValuedChoice => ({
  kind: 'vote',
  step: 'vote',
  by: 'player',
  afterBy: 'luck',
  value: inBatches(value),
  chosen: inBatches(chosen),
});

/** Every way the game can go for a first player of this policy, told by the ledger against the best policy. */
function games(played: Policy): readonly Game[] {
  return CARDS.flatMap((own) =>
    othersOf(own).flatMap((other) => {
      const [bet, bets] = [played.bet[own], OPPONENT.bet[other]];
      const opening = (action: 'bet' | 'pass') => choice(mixed(own, BEST), first(own, action, BEST));
      const reply = (call: number) => choice(whenBet(own, BEST.call[own]), whenBet(own, call));
      const call = OPPONENT.call[other];
      const ways: readonly (readonly [number, readonly ValuedChoice[], number])[] = [
        [bet * call, [opening('bet')], showdown(own, other, 2)],
        [bet * (1 - call), [opening('bet')], 1],
        [(1 - bet) * (1 - bets), [opening('pass')], showdown(own, other, 1)],
        [(1 - bet) * bets * played.call[own], [opening('pass'), reply(1)], showdown(own, other, 2)],
        [(1 - bet) * bets * (1 - played.call[own]), [opening('pass'), reply(0)], -1],
      ];
      return ways
        .filter(([chance]) => chance > 0)
        .map(([chance, choices, end]): Game => {
          const {
            luck,
            choices: own,
            start,
            close,
          } = settle(choices, inBatches(end), { average: null, dealsPerBatch: 1 });
          return {
            chance: chance / 6,
            luck: luck.value,
            choices: own.value,
            start: start.value,
            close: close.value,
          };
        });
    }),
  );
}

const POLICIES: readonly (readonly [string, Policy])[] = [
  ['that plays its best', BEST],
  ['that always bets', { bet: [1, 1, 1], call: [1, 1, 1] }],
  ['that never bets and always folds', { bet: [0, 0, 0], call: [0, 0, 0] }],
  ['that calls with anything', { bet: [0, 0, 0], call: [1, 1, 1] }],
  ['that bluffs half of the time', { bet: [1 / 2, 1 / 2, 1 / 2], call: [1 / 2, 1 / 2, 1 / 2] }],
];

describe('in Kuhn’s poker, all of it counted out, the ledger of a first player', () => {
  test.each(POLICIES)('%s adds up in every game, and its luck is worth nothing on average', (_, policy) => {
    const all = games(policy);
    expect(all.reduce((sum, { chance }) => sum + chance, 0)).toBeCloseTo(1, 12);
    for (const { start, luck, choices, close } of all) {
      expect(Math.round(1000 * start) + Math.round(1000 * luck) + Math.round(1000 * choices)).toBe(
        Math.round(1000 * close),
      );
    }
    expect(all.reduce((sum, { chance, luck }) => sum + chance * luck, 0)).toBeCloseTo(0, 9);
  });

  test('begins at the published value, a loss of one eighteenth, which its best choices keep on average', () => {
    const all = games(BEST);
    expect(all.reduce((sum, { chance, start }) => sum + chance * start, 0)).toBeCloseTo(-SCALE / 18, 9);
    expect(all.reduce((sum, { chance, close }) => sum + chance * close, 0)).toBeCloseTo(-SCALE / 18, 9);
    expect(all.reduce((sum, { chance, choices }) => sum + chance * choices, 0)).toBeCloseTo(0, 9);
  });

  test.each(POLICIES)(
    '%s charges its choices just what it wins less than the published value',
    (_, policy) => {
      const all = games(policy);
      const won = all.reduce((sum, { chance, close }) => sum + chance * close, 0);
      const charged = all.reduce((sum, { chance, choices }) => sum + chance * choices, 0);
      expect(charged).toBeCloseTo(won + SCALE / 18, 9);
      expect(charged).toBeLessThan(1e-9);
    },
  );
});
