// An exchange laid in to its end, as one of the rounds that this browser stores.
import {
  type CardFile,
  forFour,
  type LaidExchange,
  laidRecord,
  packPlay,
  roundIdFor,
  type StoredChoice,
  type StoredRound,
  stepOfOutcome,
  storedChoice,
} from '../../../shared-engine/index.ts';
import { cardHash, JUDGE } from '../history/round-of.ts';
import type { Judge } from '../question/judged.ts';
import type { OwnTable } from './own-table.ts';
import { OWN_TILES, placeName } from './strings.ts';

export interface LaidEnd {
  readonly own: OwnTable;
  readonly exchange: LaidExchange;
  /** None where not all of them have been judged here: the review makes them again. */
  readonly choices: readonly StoredChoice[];
  readonly card: CardFile;
  readonly playedAt: number;
}

const AT = { table: OWN_TILES.table, number: 1 };

export function laidRoundId(exchange: LaidExchange): string {
  return roundIdFor(AT, null, laidRecord(exchange));
}

export function laidRound({ own, exchange, choices, card, playedAt }: LaidEnd): StoredRound {
  const record = laidRecord(exchange);
  const id = laidRoundId(exchange);
  const steps = record.steps.map(stepOfOutcome);
  const helped = own.helped.filter((step) => steps.includes(step));
  return {
    summary: {
      id,
      playedAt,
      place: 'tiles',
      ...AT,
      card: { hash: cardHash(card), id: card.id, name: card.name },
      open: false,
      judge: JUDGE,
      choices,
      ...(helped.length > 0 && { helped }),
    },
    detail: {
      id,
      seats: forFour((seat) => ({ name: placeName(seat), style: null })),
      aims: {},
      play: packPlay({ record, closing: { commitment: null, ownLeaf: null, opened: null, racks: null } }),
    },
  };
}

/** All choices as far as they have been judged; `exchanges` are as they stood before each entry. */
export function choicesJudged(
  judge: Judge,
  { entries }: OwnTable,
  exchanges: readonly LaidExchange[],
): readonly StoredChoice[] {
  const judged = entries.flatMap((entry, place) =>
    entry.kind === 'choice' ? [judge.of(laidRecord(exchanges[place]!), entry.choice)] : [],
  );
  const parts = judged.map((judgement) =>
    judgement === null || judgement.is === 'failed' ? [] : judgement.parts,
  );
  if (parts.some(({ length }) => length === 0)) return [];
  return parts.flat().map(({ choice }) => storedChoice(choice));
}
