// Which sound belongs to what happens at a table; the code that plays it is fetched when the first one is due.
import { isWaitingFor } from '../../shared-engine/index.ts';
import { type Room, type RoomState, seatedAt } from '../room/room.ts';
import { newlySaid } from '../room/table-talk.tsx';
import type { Sound } from './sound-synth.ts';

type SoundState = Pick<RoomState, 'table' | 'layout'>;

/** A tile laid into or taken out of the tray, tiles that arrived, a choice that waits for this player. */
export function soundFor(before: SoundState, now: SoundState): Sound | null {
  const was = seatedAt(before.table);
  const is = seatedAt(now.table);
  if (is === null || was === null || was.table.round !== is.table.round) return null;
  if (newlySaid(was.table, is.table).some(({ to }) => to === is.you)) return 'chime';
  const steps = is.view.record.steps;
  if (steps.length > was.view.record.steps.length) {
    const last = steps.at(-1);
    return last?.kind === 'move' && last.received.length > 0 ? 'clack' : 'chime';
  }
  if (isWaitingFor(is.view.stage, is.you) && !isWaitingFor(was.view.stage, was.you)) return 'chime';
  return now.layout.tray.length !== before.layout.tray.length && is.view.answer === null ? 'tap' : null;
}

/** Plays the sounds of a room until the function that it returns is called. */
export function playSounds(room: Room): () => void {
  let before = room.state.peek();
  return room.state.subscribe((now) => {
    const sound = soundFor(before, now);
    before = now;
    if (sound) void import('./sound-synth.ts').then(({ play }) => play(sound));
  });
}
