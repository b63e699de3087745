// What choices cost and what luck brought, from the first rounds to the latest.
import { type Estimate, estimate } from '../analysis/index.ts';
import { isUnaided, type RoundSummary, type StoredLedger } from './stored-round.ts';

/** Points of the line, at most, and rounds behind one of them, at least. */
const MOST_POINTS = 8;
const LEAST_ROUNDS = 4;
/** Probability of each end of an interval. */
const TAIL = 0.025;

/** Some rounds that follow each other, in wins of 100 games a round. */
export interface LedgerMeans {
  /** The place of the first of them among all, from 1. */
  readonly from: number;
  readonly rounds: number;
  /** What the choices cost against steady play. */
  readonly cost: Estimate;
  readonly luck: Estimate;
}

export interface LedgerLine {
  /** Null where no round has a ledger. */
  readonly all: LedgerMeans | null;
  /** The oldest first, of about as many rounds each; empty where they are too few. */
  readonly points: readonly LedgerMeans[];
  /** Rounds whose luck has not been worked out, and rounds left out because the coach helped. */
  readonly missing: number;
  readonly helped: number;
}

type Played = Pick<RoundSummary, 'playedAt' | 'choices' | 'helped' | 'ledger'>;

export function ledgerLine(rounds: readonly Played[]): LedgerLine {
  const own = rounds.filter(
    ({ choices }) => choices.length === 0 || choices.some(({ by }) => by === 'player'),
  );
  const alone = own.filter((round) =>
    round.choices.every((choice) => isOther(choice) || isUnaided(round, choice)),
  );
  const known = alone
    .toSorted((a, b) => a.playedAt - b.playedAt)
    .flatMap(({ ledger }) => (ledger === undefined ? [] : [ledger]));
  const points = Math.min(MOST_POINTS, Math.floor(known.length / LEAST_ROUNDS));
  return {
    all: known.length > 0 ? meansOf(known, 1) : null,
    points: points < 2 ? [] : Array.from({ length: points }, (_, nth) => part(known, nth, points)),
    missing: alone.length - known.length,
    helped: own.length - alone.length,
  };
}

function isOther({ by }: RoundSummary['choices'][number]): boolean {
  return by !== 'player';
}

function part(known: readonly StoredLedger[], nth: number, of: number): LedgerMeans {
  const from = Math.floor((nth * known.length) / of);
  const until = Math.floor(((nth + 1) * known.length) / of);
  return meansOf(known.slice(from, until), from + 1);
}

function meansOf(ledgers: readonly StoredLedger[], from: number): LedgerMeans {
  const costs = ledgers.map(({ choices }) => -choices);
  const luck = ledgers.map(
    ({ start, close, choices, standIns, jumps }) => close - start - choices - standIns - jumps,
  );
  return { from, rounds: ledgers.length, cost: meanOf(costs), luck: meanOf(luck) };
}

/** Of a single round nothing is known of how rounds differ. */
function meanOf(values: readonly number[]): Estimate {
  if (values.length < 2) return { value: values[0] ?? 0, halfWidth: Infinity };
  return estimate(Float64Array.from(values), TAIL);
}
