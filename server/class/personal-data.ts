// The data of one player in a class's log: shown to that player, and deleted from the log on demand.
import { type Recorded, recordedIn } from '../aggregate/recorded.ts';
import { rewriteLog } from '../aggregate/rewrite.ts';
import type { Store, StoredLog } from '../ports.ts';
import { FORGOTTEN_NAME, NO_SECRET_HASH, type PersonalDataEntry } from '../room/personal-data.ts';
import type { ClassEvent } from './event.ts';
import { classEvents, classSnapshotFrom } from './stored-event.ts';

/** Everything about this player in the class itself, oldest first; choices are stored at the table. */
export function playerDataOf(log: StoredLog, player: number): PersonalDataEntry[] {
  const recorded = log.rows.flatMap((row) => recordedIn(row, classEvents));
  return entriesIn(recorded).flatMap(({ at, event, joined }): PersonalDataEntry[] => {
    switch (event.kind) {
      case 'joined':
        return joined === player ? [{ at, what: 'joined the class', name: event.name }] : [];
      case 'stand-in':
        if (event.player !== player) return [];
        return [{ at, what: event.on ? 'the teacher let a bot play' : 'got the seat back' }];
      case 'renamed':
        return event.player === player
          ? [{ at, what: 'the teacher gave another name', name: event.name }]
          : [];
      case 'seated':
        return event.player === player ? [{ at, what: 'the teacher gave another place' }] : [];
      case 'removed':
        return event.player === player ? [{ at, what: 'the teacher removed the player' }] : [];
      case 'aimed': {
        if (event.player !== player) return [];
        const { deal, step, sections } = event;
        return [{ at, what: 'named aims', deal: deal + 1, step, sections }];
      }
      default:
        return [];
    }
  });
}

/** Takes the player's name and the hash of the player's secret out of the stored log. */
export function forgetPlayer(
  store: Pick<Store, 'history' | 'rewrite'>,
  code: string,
  player: number,
): Promise<void> {
  const nobody = { name: FORGOTTEN_NAME, secretHash: NO_SECRET_HASH };
  return rewriteLog(store, code, {
    codec: classEvents,
    changed: (recorded) =>
      entriesIn(recorded).flatMap(({ event, joined, ...one }): Recorded<ClassEvent>[] => {
        if (event.kind === 'joined' && joined === player) return [{ ...one, event: { ...event, ...nobody } }];
        const isRenamed = event.kind === 'renamed' && event.player === player;
        return isRenamed ? [{ ...one, event: { ...event, name: FORGOTTEN_NAME } }] : [];
      }),
    snapshot(text) {
      const state = classSnapshotFrom(text);
      const forgotten = { ...nobody, seatedAs: FORGOTTEN_NAME };
      const players = state.players.map((one) => (one.id === player ? { ...one, ...forgotten } : one));
      return JSON.stringify({ ...state, players });
    },
  });
}

interface Entry extends Recorded<ClassEvent> {
  /** Number of the player who joined with this event; null for every other. */
  readonly joined: number | null;
}

function entriesIn(recorded: readonly Recorded<ClassEvent>[]): Entry[] {
  let players = 0;
  return recorded.map((one) => ({ ...one, joined: one.event.kind === 'joined' ? players++ : null }));
}
