// A notice of the system's for whoever is in another window: it is your choice. It never says which tiles.
import { isWaitingFor } from '../../shared-engine/index.ts';
import { type Room, type RoomState, seatedAt } from '../room/room.ts';
import { nameOf } from '../room/seat-names.ts';
import { newlySaid } from '../room/table-talk.tsx';
import { TABLE } from './strings.ts';

type NoticeState = Pick<RoomState, 'table'>;

/** Null where nothing new waits for this player. */
export function noticeFor(before: NoticeState, now: NoticeState): string | null {
  const { table } = now;
  if (table === null || before.table === null) return null;
  const reminder = newlySaid(before.table, table).find(({ to }) => to !== null && to === table.you);
  if (reminder) return TABLE.reminded(nameOf(table, reminder.seat));
  const is = seatedAt(table);
  if (is === null || !isWaitingFor(is.view.stage, is.you)) return null;
  const was = seatedAt(before.table);
  const isNew =
    was === null ||
    was.table.round !== is.table.round ||
    was.view.record.steps.length < is.view.record.steps.length;
  return isNew ? TABLE.yourChoice : null;
}

/** Shows the notices of a room until the function that it returns is called. */
export function showNotices(room: Room): () => void {
  let before = room.state.peek();
  return room.state.subscribe((now) => {
    const notice = document.hidden ? noticeFor(before, now) : null;
    before = now;
    if (notice) void show(notice, now.code);
  });
}

/** A phone shows only what the page's service worker asks for. */
async function show(title: string, code: string): Promise<void> {
  if (!('Notification' in window) || Notification.permission !== 'granted') return;
  const options = { tag: code, icon: '/icon.svg' };
  const worker = await navigator.serviceWorker?.getRegistration();
  if (worker) await worker.showNotification(title, options);
  else new Notification(title, options);
}
