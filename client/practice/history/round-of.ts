// From a table whose round has just closed to the round as this browser stores it.
import {
  aimsMet,
  type CardFile,
  forFour,
  packPlay,
  type RoundPlace,
  type RoundSummary,
  roundIdFor,
  type Seat,
  type SeatInfo,
  type SeatStep,
  STEPS,
  type Step,
  type StoredCard,
  type StoredRound,
  storedChoices,
  storedLedger,
  type Table,
  textHash,
  WIN_MODEL,
} from '../../../shared-engine/index.ts';
import { namedAt, wasHelped } from '../../coach/helped.ts';
import { type Aims, aimsAt } from '../../room/aims.ts';
import { type RoomState, seatedAt } from '../../room/room.ts';

/** Which judge gives the verdicts of this page. */
export const JUDGE = WIN_MODEL.made.date;

type ClosedState = Pick<RoomState, 'home' | 'table' | 'review' | 'aims' | 'helped' | 'commitment'>;

export interface Circumstances {
  readonly playedAt: number;
  readonly placeOf: (table: Table, home: RoomState['home']) => RoundPlace;
  /** Null where the card cannot be had. */
  readonly card: CardFile | null;
}

/** Null unless this page holds a seat in a round that is closed. */
export function roundOf(state: ClosedState, { playedAt, placeOf, card }: Circumstances): StoredRound | null {
  const seated = seatedAt(state.table);
  if (seated === null) return null;
  const { table, view } = seated;
  const { stage } = view;
  if (stage.phase !== 'closed') return null;
  const { opened, racks } = stage;
  // What went on in the page is another deal than the server's, and has no commitment (rule G2).
  const kept = state.home === 'page' ? null : state.commitment;
  const commitment = kept?.round === table.round ? kept.commitment : view.commitment;
  const at = { table: table.code, number: table.round };
  const id = roundIdFor(at, commitment, view.record);
  const aims = aimsOf(state.aims, table.round, view.record.steps);
  const met = state.review && aimsMet(state.review, aims);
  const helped = STEPS.filter((step) => wasHelped(state.helped, table.round, step));
  const coached = helped.flatMap((step) => {
    const named = namedAt(state.helped, table.round, step);
    return named === null ? [] : [[step, named] as const];
  });
  const summary: RoundSummary = {
    id,
    playedAt,
    place: placeOf(table, state.home),
    ...at,
    card: { hash: card && cardHash(card), id: table.card.id, name: table.card.name },
    open: opened !== null,
    judge: JUDGE,
    choices: state.review ? storedChoices(state.review, aims) : [],
    ...(met && { aims: met }),
    ...(helped.length > 0 && { helped }),
    ...(state.review && storedLedger(state.review)),
  };
  const detail = {
    id,
    seats: forFour((seat) => sitter(table.seats[seat], seat)),
    aims,
    ...(coached.length > 0 && { coached: Object.fromEntries(coached) }),
    play: packPlay({
      record: view.record,
      closing: { commitment, ownLeaf: view.ownLeaf, opened, racks },
    }),
  };
  return { summary, detail };
}

export function cardHash(card: CardFile): string {
  return textHash(JSON.stringify(card));
}

export function storedCard(card: CardFile): StoredCard {
  return { hash: cardHash(card), file: card };
}

function sitter(info: SeatInfo, seat: Seat): StoredRound['detail']['seats'][number] {
  if (info.kind === 'empty') return { name: `seat ${seat + 1}`, style: null };
  return { name: info.name, style: info.kind === 'bot' ? info.style : null };
}

/** Of the passes that came about: an aim that stands would hold for any other too. */
function aimsOf(aims: Aims, round: number, steps: readonly SeatStep[]): StoredRound['detail']['aims'] {
  const said: Partial<Record<Step, readonly string[]>> = {};
  for (const step of steps) {
    if (step.kind !== 'move') continue;
    const sections = aimsAt(aims, round, step.step);
    if (sections.length > 0) said[step.step] = sections;
  }
  return said;
}
