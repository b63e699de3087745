// A room at work: its log-keeping core with the table around it, the keeper and the reviews.
import { CLOSE } from '../../shared-engine/index.ts';
import type { PlayingCard, Undo } from '../ports.ts';
import { logTag } from '../secrets.ts';
import type { Owner } from './command.ts';
import type { Logged } from './event.ts';
import { Keeper, type KeeperPorts } from './keeper.ts';
import { Recent } from './recent.ts';
import { type ReviewPorts, Reviews } from './reviews.ts';
import { Room, type RoomPorts } from './room.ts';
import type { RoomState } from './state.ts';
import { storyOf } from './story.ts';
import { type Coming, type Line, Table } from './table.ts';

export interface LivePorts extends RoomPorts, KeeperPorts, ReviewPorts {
  /** Makes reviews at the tables of a class, where many hold and do the same; missing: as at any other table. */
  readonly inClass?: Pick<ReviewPorts, 'reviewer' | 'judges'>;
}

export interface LiveRoom {
  readonly room: Room;
  readonly table: Table;
  readonly card: PlayingCard;
  /** Lets somebody listen to the table until the answer is called; see `Table.attach`. */
  attach(line: Line, owner: Owner | null, coming: Coming): Undo;
  /** Ends every timer; what was begun is finished and kept. */
  stop(): Promise<void>;
}

/** The room that this log describes, at work; null when it describes none or a closed one. */
export function bringToLife(
  code: string,
  log: readonly Logged[],
  cardOf: (state: RoomState) => PlayingCard,
  ports: LivePorts,
): LiveRoom | null {
  const recent = Recent.fromLog(log);
  if (recent === null || recent.latest.closed) return null;
  const roomLog = ports.log.child({ room: logTag(code) });
  const card = cardOf(recent.latest);
  const room = new Room(code, log, recent, { ...ports, log: roomLog });
  room.onChange((_, happened) => {
    for (const { seq, event } of happened) roomLog.info({ seq, ...storyOf(event) }, 'event');
  });
  const about = { id: card.card.id, name: card.card.name };
  const table = new Table(room, about, { clock: ports.clock, node: ports.nodes.id });
  const making = room.state.door === 'class' ? { ...ports, ...ports.inClass } : ports;
  const reviews = new Reviews(room, table, card, making, roomLog);
  const keeper = new Keeper(room, card, { ...ports, log: roomLog });
  room.onChange((now) => {
    if (!now.closed) return;
    keeper.stop();
    reviews.stop();
    table.endAll(CLOSE.goingAway);
  });
  keeper.wake();
  return {
    room,
    table,
    card,
    attach: (line, owner, coming) => table.attach(line, owner, reviews.waiting, coming),
    async stop() {
      keeper.stop();
      reviews.stop();
      await room.drained();
    },
  };
}
