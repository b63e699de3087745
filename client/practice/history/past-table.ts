// A round of the past as a table that is closed: the same review screen shows it, as it was told or as far as it was.
import {
  type CompiledCard,
  createSwarKernel,
  facesOf,
  finalRack,
  forFour,
  type RoundPlay,
  reviewRound,
  type SeatInfo,
  type StoredRound,
  type Table,
  withDeepAnalysis,
  withLedger,
} from '../../../shared-engine/index.ts';
import type { Connection } from '../../connection/connection.ts';
import type { Cancel, StartTimer } from '../../connection/socket.ts';
import type { RoomPorts } from '../../room/room.ts';
import type { StartDeepAnalysis } from '../../workers/deep-analysis.ts';
import { withKept } from './told.ts';

export interface PastTablePorts {
  readonly round: StoredRound;
  readonly play: RoundPlay;
  readonly card: CompiledCard;
  readonly startTimer: StartTimer;
  readonly startDeepAnalysis: StartDeepAnalysis;
  readonly on: Parameters<RoomPorts['connect']>[0];
}

export function pastTable({
  round,
  play,
  card,
  startTimer,
  startDeepAnalysis,
  on,
}: PastTablePorts): Connection {
  const { number } = round.summary;
  const { record } = play;
  let cancelReview: Cancel = () => {};
  let cancelAnalysis: Cancel = () => {};
  let isStopped = false;

  function stop() {
    isStopped = true;
    cancelReview();
    cancelAnalysis();
  }

  /** The table is shown first, because a review takes a moment. */
  function start() {
    stop();
    isStopped = false;
    on.state({ kind: 'open' });
    on.message({ kind: 'table', seq: 1, table: closedTable(round, play) });
    cancelReview = startTimer(30, () => void tell());
  }

  /** At once where all of it was told before; what was not is worked out now. */
  async function tell() {
    let review = await withKept(round.summary.id, reviewRound(record, createSwarKernel(card)));
    if (isStopped) return;
    const choices = [...review.choices.keys()].filter(
      (nth) => review.choices[nth]?.analysis.depth === 'quick',
    );
    const more = choices.length > 0 || review.ledger === null;
    const send = () => on.message({ kind: 'review', round: number, review, more });
    send();
    if (!more) return;
    cancelAnalysis = startDeepAnalysis(
      { record, card, choices },
      {
        onChoice({ nth, analysis }) {
          review = withDeepAnalysis(review, nth, analysis);
          send();
        },
        onLedger(ledger) {
          review = withLedger(review, ledger);
          send();
        },
      },
    );
  }

  return { start, retryNow() {}, send() {}, stop };
}

/** As it was shown to this seat at the close. */
function closedTable({ summary, detail }: StoredRound, { record, closing }: RoundPlay): Table {
  const { table: code, number, place, card } = summary;
  const { terms, dealer, seat } = record;
  const { commitment, ownLeaf, opened, racks } = closing;
  return {
    code,
    you: seat,
    mode: place === 'friends' || place === 'class' ? place : 'alone',
    seats: forFour((other): SeatInfo => {
      // Who sat around real tiles is not known; what is stored in place of names says where.
      if (place === 'tiles' && other !== seat) return { kind: 'empty' };
      const { name, style } = detail.seats[other];
      if (style !== null) return { kind: 'bot', name, style };
      return { kind: 'person', name, present: other === seat, ready: false, host: false };
    }),
    terms,
    card: { id: card.id, name: card.name },
    round: number,
    remaining: null,
    view: {
      audience: 'seat',
      dealer,
      commitment,
      terms,
      stage: { phase: 'closed', opened, racks },
      rack: facesOf(finalRack(record)),
      answer: null,
      record,
      ownLeaf,
    },
  };
}
