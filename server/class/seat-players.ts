// Gives players of a class other names and places, as the teacher says.
import { CLASS_LIMITS } from '../../shared-engine/index.ts';
import { type Answer, reject } from '../aggregate/decision.ts';
import type { Registry } from '../registry/registry.ts';
import { distinctName, parseName } from '../room/name.ts';
import type { ActiveClass } from './active-class.ts';
import { newTable } from './joining.ts';
import { arePlacesOpen } from './seating.ts';
import { type ClassPlayer, playersIn } from './state.ts';

/** The name as the rules of names have it, and unlike any other in the class (rule AC8). */
export function renamePlayer(live: ActiveClass, player: number, text: string): Promise<Answer> {
  return live.joins.run(async () => {
    const parsed = parseName(text);
    if (parsed === null) return reject('bad-name');
    const others = playersIn(live.state).filter(({ id }) => id !== player);
    const name = distinctName(
      parsed,
      others.map((one) => one.name),
    );
    return live.submit({ kind: 'rename', player, name });
  });
}

interface WantedPlace {
  readonly player: number;
  /** Number of the table, 1 for the first; one more than there are opens another. */
  readonly table: number;
  readonly seat: ClassPlayer['seat'];
}

/** `from` is the address of the teacher, as the limits count it. The table and the one left follow with the class. */
export function seatPlayer(
  live: ActiveClass,
  registry: Registry,
  { player, table, seat }: WantedPlace,
  from: string,
): Promise<Answer> {
  return live.joins.run(async () => {
    const { state } = live;
    if (!playersIn(state).some(({ id }) => id === player)) return reject('no-such-player');
    if (!arePlacesOpen(state)) return reject('places-fixed');
    const known = state.tables[table - 1];
    if (known !== undefined) return live.submit({ kind: 'seat', player, room: known, seat });
    if (state.tables.length >= CLASS_LIMITS.players) return reject('too-many-rooms');
    const opened = await newTable(live, registry, from);
    return opened.ok ? live.submit({ kind: 'seat', player, room: opened.room, seat }) : opened;
  });
}
