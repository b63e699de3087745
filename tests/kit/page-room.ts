// A room of the page that stores nothing; the test says what its connection hears.
import { emptyLayout } from '../../client/room/rack-layout.ts';
import { createRoom, type Room, type RoomPorts } from '../../client/room/room.ts';

type On = Parameters<RoomPorts['connect']>[0];

export function pageRoomOf(
  code: string,
  also: Partial<RoomPorts> = {},
): { readonly room: Room; readonly on: On } {
  const heard: On[] = [];
  const room = createRoom(code, emptyLayout('suit'), {
    home: 'server',
    newId: () => 'id',
    now: () => 0,
    saveLayout() {},
    cardOpen: false,
    saveCardOpen() {},
    initialAims: {},
    saveAims() {},
    initialHelped: [],
    saveHelped() {},
    initialCommitment: null,
    saveCommitment() {},
    loadCard: async () => null,
    announcementsOf: () => [],
    connect(on) {
      heard.push(on);
      return { start() {}, retryNow() {}, send() {}, stop() {}, pendingCount: () => 0 };
    },
    ...also,
  });
  return { room, on: heard[0]! };
}
