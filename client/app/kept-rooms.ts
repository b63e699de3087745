// Rooms whose rounds this browser stores, and the cards that it has stored with them.
import { type CardFile, type CompiledCard, compileCard } from '../../shared-engine/index.ts';
import { browserTimer } from '../connection/socket.ts';
import type { KeepPorts } from '../practice/history/keep-rounds.ts';
import type { Room } from '../room/room.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { ownKeyIn } from './routes/deal-link.ts';

/** How the rounds of a room are stored in this browser. */
type Kept = Pick<KeepPorts, 'placeOf' | 'loadCardFile' | 'isStoredAlready' | 'goesOn'>;

/** The room, its rounds being stored while it is open. */
export function keeping(room: Room, kept: Kept): Room {
  let stop: Promise<() => void> | null = null;
  async function keep(): Promise<() => void> {
    try {
      const { keepRounds } = await import('../practice/history/keep-rounds.ts');
      return keepRounds(room, { ...kept, now: Date.now, startTimer: browserTimer, notes: lastingStorage });
    } catch {
      // Without a network the part that stores rounds may be missing; the table goes on without it.
      return () => {};
    }
  }
  return {
    ...room,
    reconnect() {
      stop ??= keep();
      room.reconnect();
    },
    close() {
      room.close();
      void stop?.then((end) => end());
      stop = null;
    },
  };
}

/** The card of a table of the server, from the server or else as this browser has stored it; or one of one's own here. */
export async function cardFileOf(code: string | null): Promise<CardFile | null> {
  if (code === null) return null;
  const { loadCardFile, ownCardFile } = await import('../cards/load-card.ts');
  const own = ownKeyIn(code);
  if (own !== null) return ownCardFile(own);
  const loaded = await loadCardFile(code);
  if (loaded !== null) return loaded;
  const { cardOfTable } = await import('../storage/history/rounds.ts');
  const stored = await cardOfTable(code);
  return stored.ok ? (stored.value?.file ?? null) : null;
}

/** Null where it can be had neither from the server nor here. */
export async function cardOfTable(code: string): Promise<CompiledCard | null> {
  const file = await cardFileOf(code);
  return file && compileCard(file);
}
