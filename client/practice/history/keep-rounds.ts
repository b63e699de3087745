// Stores each round that closes at a table, and its verdicts as they come, in this browser and nowhere else.
import {
  type CardFile,
  HOUSE_CARD,
  type RoundPlace,
  type StoredCard,
  type StoredRound,
  type Table,
} from '../../../shared-engine/index.ts';
import type { Cancel, StartTimer } from '../../connection/socket.ts';
import { type Room, type RoomState, seatedAt } from '../../room/room.ts';
import type { TextStorage } from '../../storage/browser-storage.ts';
import type { StorageProblem } from '../../storage/history/database.ts';
import { askToPersist, noteChange, noteProblem } from '../../storage/history/durability.ts';
import { listRounds, removeRounds, storeRound } from '../../storage/history/rounds.ts';
import { followUnfinished, type GoesOn } from './note-unfinished.ts';
import { roundOf, storedCard } from './round-of.ts';
import { keepTold } from './told.ts';

export interface KeepPorts {
  /** `home` is where the table was when the round closed. */
  readonly placeOf: (table: Table, home: RoomState['home']) => RoundPlace;
  /** The card of the table as it was written; null where it cannot be had. */
  readonly loadCardFile: () => Promise<CardFile | null>;
  /** Whether this round stands among the rounds already, as it went on elsewhere (rule G4). */
  readonly isStoredAlready?: (table: Table) => boolean;
  /** Where a round that is left goes on; missing where that is told elsewhere. */
  readonly goesOn?: GoesOn;
  readonly now: () => number;
  readonly startTimer: StartTimer;
  readonly notes: TextStorage;
}

/** The round is stored as it closes; verdicts follow one by one, and are stored when they pause so long, in ms. */
const QUIET = 700;

/** Returns a function that ends it and stores what has not been stored yet. */
export function keepRounds(room: Pick<Room, 'state'>, ports: KeepPorts): () => void {
  let closedAt: (Pick<RoomState, 'home'> & { readonly round: number; readonly at: number }) | null = null;
  let card: { readonly id: string; readonly file: Promise<CardFile | null> } | null = null;
  let asked: string | null = null;
  let latest: RoomState | null = null;
  let cancel: Cancel | null = null;
  let lastReview: RoomState['review'] | undefined;

  const end = room.state.subscribe((state) => {
    const seated = seatedAt(state.table);
    if (seated) askAhead(state);
    if (seated?.view.stage.phase !== 'closed') return;
    if (ports.isStoredAlready?.(seated.table)) return;
    const { round } = seated.table;
    const { home } = state;
    // A deal of the page may have the number that the server then gives to its next one.
    const isNew = closedAt?.round !== round || closedAt.home !== home;
    if (!isNew && lastReview === state.review) return;
    if (isNew) closedAt = { home, round, at: ports.now() };
    lastReview = state.review;
    latest = state;
    cancel?.();
    cancel = ports.startTimer(isNew ? 0 : QUIET, () => void store());
  });

  const endUnfinished = ports.goesOn ? followUnfinished(room, { ...ports, ...ports.goesOn }) : () => {};

  async function store(): Promise<void> {
    cancel = null;
    const state = latest;
    latest = null;
    if (state === null || closedAt === null) return;
    const playedAt = closedAt.at;
    const file = await cardOf(state);
    const round = roundOf(state, { playedAt, placeOf: ports.placeOf, card: file });
    if (round === null) return;
    const problem = await keepRound(round, file && storedCard(file), ports.notes);
    if (problem === null && state.review) await keepTold(round.summary.id, state.review);
  }

  /** Once for each card while the round is played: whoever leaves as it closes does not wait for a card to be fetched. */
  function askAhead(state: RoomState): void {
    const id = state.table?.card.id ?? HOUSE_CARD.id;
    if (asked === id) return;
    asked = id;
    void cardOf(state);
  }

  async function cardOf({ table }: RoomState): Promise<CardFile | null> {
    const id = table?.card.id ?? HOUSE_CARD.id;
    if (id === HOUSE_CARD.id) return HOUSE_CARD;
    if (card?.id !== id) card = { id, file: ports.loadCardFile() };
    const { file } = card;
    const loaded = await file;
    // A card that could not be had is asked for again the next time.
    if (loaded === null && card?.file === file) card = null;
    return loaded;
  }

  return () => {
    end();
    endUnfinished();
    if (cancel === null) return;
    cancel();
    void store();
  };
}

/** Stores one round and notes that it is to be there; why it could not be stored, or null. */
export async function keepRound(
  round: StoredRound,
  card: StoredCard | null,
  notes: TextStorage,
): Promise<StorageProblem | null> {
  const stored = await storeRound(round, card);
  noteProblem(notes, stored.ok ? null : stored.problem);
  if (!stored.ok) return stored.problem;
  const { isNew, count } = stored.value;
  noteChange(notes, isNew ? 1 : 0, count);
  if (count === 1) await askToPersist();
  return null;
}

/** Takes back one round that was stored here. */
export async function dropRound(id: string, notes: TextStorage): Promise<void> {
  const removed = await removeRounds([id]);
  const listed = await listRounds();
  if (removed.ok && listed.ok) noteChange(notes, -removed.value.length, listed.value.length);
}
