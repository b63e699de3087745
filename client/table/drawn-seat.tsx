// One seat as it is drawn: the backs of its tiles, what it has put out, its name, and what it said last.
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import {
  SEATS,
  type Seat,
  type SeatView,
  type SpectatorView,
  type Table,
} from '../../shared-engine/index.ts';
import { nameOf, type Place } from '../room/seat-names.ts';
import { BotTag, SeatStatus } from '../room/seat-status.tsx';
import { wordsAt, wordsOf } from '../room/table-talk.tsx';
import { TABLE } from './strings.ts';
import { revealedBy, tileCountsOf } from './table-facts.ts';

interface DrawnSeatProps {
  readonly table: Table;
  readonly view: SeatView | SpectatorView;
  readonly seat: Seat;
  readonly place: Place;
  /** Whether the open step still waits for this seat; null where no step is open. */
  readonly ready: boolean | null;
  /** Whether this seat is the one that gets the tiles of whoever looks. */
  readonly receives?: boolean;
  /** What it does in the open step, in words. */
  readonly children?: ComponentChildren;
}

export function DrawnSeat({ table, view, seat, place, ready, receives = false, children }: DrawnSeatProps) {
  const info = table.seats[seat];
  const counts = tileCountsOf(view.stage, view.dealer, seat);
  const steps = view.audience === 'seat' ? view.record.steps : view.steps;
  const said = revealedBy(steps)?.[seat];
  const words = wordsAt(table, seat);
  return (
    <li class={`drawn-seat at-${place}${receives ? ' receiver' : ''}`}>
      <TileBacks count={counts.rack} />
      {words && (
        <span key={words.nth} class="bubble" aria-hidden="true">
          {wordsOf(table, words)}
        </span>
      )}
      <div class="plaque">
        <p class="plaque-name">
          <b>{nameOf(table, seat)}</b>
          <BotTag info={info} />
          {view.dealer === seat && <span class="east">{TABLE.east}</span>}
        </p>
        {ready !== null && <SeatStatus ready={ready} info={info} />}
        {children}
      </div>
      {counts.out > 0 ? (
        <TileBacks count={counts.out} out />
      ) : (
        said !== undefined && (
          <span key={steps.length} class="said" aria-hidden="true">
            {typeof said === 'number' ? TABLE.asked(said) : TABLE.voted(said)}
          </span>
        )
      )}
    </li>
  );
}

/** A row of tiles seen from behind, or lying face down in front of their seat. */
function TileBacks({ count, out = false }: { readonly count: number; readonly out?: boolean }) {
  return useMemo(
    () => (
      <span class={out ? 'tile-backs out' : 'tile-backs'}>
        <span class="spoken">{out ? TABLE.tilesOut(count) : TABLE.tilesOnRack(count)}</span>
        {Array.from({ length: count }, (_, index) => (
          <i key={index} />
        ))}
      </span>
    ),
    [count, out],
  );
}

/** The four seats in the order of the table, the one at the bottom first. */
export function seatsFrom(bottom: Seat): readonly Seat[] {
  return SEATS.map((_, turn) => SEATS[(bottom + turn) % 4] ?? bottom);
}
