// What the teacher gives a player of a class besides help: another name, and before the first deal another place.
import { useSignal } from '@preact/signals';
import { type DashboardPlayer, SEATS, type Seat } from '../../../shared-engine/index.ts';
import type { Dispatch } from '../model/requests.ts';
import { PLACES } from './strings.ts';

interface PlayerProps {
  readonly player: DashboardPlayer;
  readonly dispatch: Dispatch;
}

export function RenameForm({ player: { id, name }, dispatch }: PlayerProps) {
  const text = useSignal(name);
  return (
    <form
      class="row"
      onSubmit={(event) => {
        event.preventDefault();
        const wanted = text.value.trim();
        if (wanted !== '' && wanted !== name) dispatch({ kind: 'rename', player: id, name: wanted });
      }}
    >
      <input
        class="short"
        aria-label={PLACES.nameOf(name)}
        autocomplete="off"
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
      />
      <button type="submit">{PLACES.rename}</button>
    </form>
  );
}

interface SeatFormProps extends PlayerProps {
  /** Tables of the class so far. */
  readonly tables: number;
  readonly players: readonly DashboardPlayer[];
}

/** Each place says who has it: whoever does changes places with the player. */
export function SeatForm({ player, tables, players, dispatch }: SeatFormProps) {
  const { id, name, table, seat } = player;
  const place = useSignal(`${table} ${seat}`);
  const places = Array.from({ length: tables + 1 }, (_, n) => n + 1).flatMap((number) =>
    SEATS.map((at) => ({ number, at, value: `${number} ${at}` })),
  );
  const whoAt = (number: number, at: Seat) =>
    players.find((one) => one.table === number && one.seat === at)?.name ?? null;
  const chosen = places.find(({ value }) => value === place.value);
  return (
    <form
      class="row"
      onSubmit={(event) => {
        event.preventDefault();
        if (chosen) dispatch({ kind: 'seat', player: id, table: chosen.number, seat: chosen.at });
      }}
    >
      <select
        aria-label={PLACES.placeOf(name)}
        value={place.value}
        onChange={(event) => {
          place.value = event.currentTarget.value;
        }}
      >
        {places.map(({ number, at, value }) => (
          <option key={value} value={value}>
            {PLACES.option(number, at, number > tables, whoAt(number, at))}
          </option>
        ))}
      </select>
      <button type="submit">{PLACES.seat}</button>
    </form>
  );
}
