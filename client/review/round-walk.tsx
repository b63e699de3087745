// All four racks from the first pass to the end, step by step, where the table's terms reveal them.
import { useSignal } from '@preact/signals';
import {
  guessAnswer,
  type Ledger,
  MOVES,
  neighbor,
  SEATS,
  type Seat,
  withNames,
} from '../../shared-engine/index.ts';
import type { Seated } from '../room/room.ts';
import { nameOrYou, neighborNames } from '../room/seat-names.ts';
import { BotTag } from '../room/seat-status.tsx';
import { STEP_NAMES } from '../room/step-names.ts';
import { capitalize } from '../tiles/tile-names.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { type RackMoment, rackMoments } from './rack-moments.ts';
import { ROUND_WALK } from './strings.ts';

interface RoundWalkProps {
  readonly seated: Seated;
  /** Holds the guess at what a neighbor ended with, which is answered here; null until it is made. */
  readonly ledger: Ledger | null;
}

export function RoundWalk({ seated, ledger }: RoundWalkProps) {
  const { stage } = seated.view;
  const at = useSignal(0);
  if (stage.phase !== 'closed' || stage.racks === null) return null;
  const moments = rackMoments(stage.opened?.moves ?? [], stage.racks);
  const place = Math.min(at.value, moments.length - 1);
  const moment = moments[place];
  if (moment === undefined) return null;
  const { table, you } = seated;
  const answer = ledger && guessAnswer(ledger.neighbors, you, stage.racks);
  const go = (by: number) => {
    at.value = Math.max(0, Math.min(moments.length - 1, place + by));
  };
  return (
    <section class="panel round-walk" aria-labelledby="walk-title">
      <h2 id="walk-title">{ROUND_WALK.title}</h2>
      {moments.length > 1 && (
        <div class="walk-steps">
          <button type="button" aria-disabled={place === 0} onClick={() => go(-1)}>
            {ROUND_WALK.earlier}
          </button>
          <p role="status">
            <b>{moment.move ? STEP_NAMES[moment.move.step] : ROUND_WALK.end}</b>{' '}
            <span class="aside">{ROUND_WALK.place(place + 1, moments.length)}</span>
          </p>
          <button type="button" aria-disabled={place === moments.length - 1} onClick={() => go(1)}>
            {ROUND_WALK.later}
          </button>
        </div>
      )}
      {SEATS.map((seat) => (
        <SeatMoment key={seat} seated={seated} seat={seat} moment={moment} />
      ))}
      {moment.move === null && answer !== null && <p>{withNames(answer, neighborNames(table, you))}</p>}
    </section>
  );
}

interface SeatMomentProps {
  readonly seated: Seated;
  readonly seat: Seat;
  readonly moment: RackMoment;
}

function SeatMoment({ seated: { table }, seat, moment: { racks, move } }: SeatMomentProps) {
  return (
    <figure>
      <figcaption>
        {capitalize(nameOrYou(table, seat))} <BotTag info={table.seats[seat]} />
        {move && <span class="aside"> {passWords(table, seat, move)}</span>}
      </figcaption>
      <TileRow tiles={racks[seat]} marked={move?.gave[seat] ?? []} />
    </figure>
  );
}

function passWords(table: Seated['table'], seat: Seat, move: NonNullable<RackMoment['move']>): string {
  const blind = move.forwarded[seat].length;
  const receiver = nameOrYou(table, neighbor(seat, MOVES[move.step].toward));
  return ROUND_WALK.passes(seat === table.you, move.gave[seat].length + blind, blind, receiver);
}
