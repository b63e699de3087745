// What a class's log holds of one pupil: told to that pupil, and taken out of it when the pupil asks for that.
import type { Logged } from '../room/event.ts';
import { FORGOTTEN_NAME, type KeptEntry, NO_KEY } from '../room/mine.ts';
import type { ClassEvent } from './event.ts';

/** Everything of this pupil in the class itself, oldest first; what was chosen is kept at the table. */
export function keptOfPupil(log: readonly Logged[], pupil: number): KeptEntry[] {
  return classEvents(log).flatMap(({ at, event, joined }): KeptEntry[] => {
    switch (event.kind) {
      case 'joined':
        return joined === pupil ? [{ at, what: 'joined the class', name: event.name }] : [];
      case 'stand-in':
        if (event.pupil !== pupil) return [];
        return [{ at, what: event.on ? 'a bot plays on by the teacher’s wish' : 'got the seat back' }];
      case 'aimed':
        if (event.pupil !== pupil) return [];
        return [{ at, what: 'named aims', deal: event.deal + 1, step: event.step, families: event.families }];
      default:
        return [];
    }
  });
}

/** The event to be put in the place of the one that names this pupil and holds the hash of the pupil's secret. */
export function withoutPupil(log: readonly Logged[], pupil: number): Logged[] {
  return classEvents(log).flatMap(({ logged, event, joined }): Logged[] => {
    if (event.kind !== 'joined' || joined !== pupil) return [];
    return [{ ...logged, event: { kind: 'class', event: { ...event, name: FORGOTTEN_NAME, key: NO_KEY } } }];
  });
}

interface Entry {
  readonly logged: Logged;
  readonly at: number;
  readonly event: ClassEvent;
  /** Number of the pupil who joined with this event; null for every other. */
  readonly joined: number | null;
}

function classEvents(log: readonly Logged[]): Entry[] {
  let pupils = 0;
  return log.flatMap((logged): Entry[] => {
    if (logged.event.kind !== 'class') return [];
    const { event } = logged.event;
    return [{ logged, at: logged.at, event, joined: event.kind === 'joined' ? pupils++ : null }];
  });
}
