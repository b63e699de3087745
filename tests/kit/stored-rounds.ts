// Rounds as a browser stores them, made from rounds that were played to their close.
import { HOUSE_CARD } from '../../shared-engine/card/house/card.ts';
import type { History } from '../../shared-engine/practice/history-file.ts';
import { packPlay } from '../../shared-engine/practice/round-play.ts';
import {
  roundIdFor,
  type StoredChoice,
  type StoredRound,
  textHash,
} from '../../shared-engine/practice/stored-round.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { opened, playOn } from './rounds.ts';

export const STORED_CARD = { hash: textHash(JSON.stringify(HOUSE_CARD)), file: HOUSE_CARD };

export function storedChoice(part: Partial<StoredChoice> = {}): StoredChoice {
  return {
    kind: 'pass',
    step: 'first-right',
    by: 'player',
    verdict: null,
    loss: null,
    halfWidth: null,
    ...part,
  };
}

/** Seat 0's round at table ABCD2345, played at `playedAt`; the same name gives the same round. */
export function storedRound(
  name: string,
  part: Partial<StoredRound['summary']> = {},
  revealRacks = false,
): StoredRound {
  const { round } = playOn(opened(name, 0, revealRacks), stream(name, 'players'));
  const { record, commitment, ownLeaf, stage } = seatView(round, 0);
  if (stage.phase !== 'closed') throw new Error('not closed');
  const at = { table: 'ABCD2345', number: 1 };
  const id = roundIdFor(at, commitment, record);
  const { opened: open, racks } = stage;
  return {
    summary: {
      id,
      playedAt: 1_000_000,
      place: 'friends',
      ...at,
      card: { hash: STORED_CARD.hash, id: 'house', name: 'House card' },
      open: open !== null,
      judge: '2026-01-01',
      choices: [storedChoice()],
      ...part,
    },
    detail: {
      id,
      seats: [
        { name: 'Ines', style: null },
        { name: 'Tomas', style: null },
        { name: 'Merle', style: 'typical' },
        { name: 'Odo', style: 'casual' },
      ],
      aims: { 'first-right': ['stairs'] },
      play: packPlay({ record, closing: { commitment, ownLeaf, opened: open, racks } }),
    },
  };
}

export function historyOf(...rounds: readonly StoredRound[]): History {
  return { cards: [STORED_CARD], rounds, schedules: [] };
}
