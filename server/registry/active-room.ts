// A room at work in this process: its aggregate with connections, broadcaster, scheduler and reviews around it.
import { CLOSE, type ConnectionOrigin, type Resume } from '../../shared-engine/index.ts';
import { Aggregate, type AggregatePorts } from '../aggregate/aggregate.ts';
import { replay } from '../aggregate/replay.ts';
import type { TableFacts } from '../delivery/audience.ts';
import { Broadcaster, type Connection } from '../delivery/broadcaster.ts';
import { StateHistory } from '../delivery/state-history.ts';
import type { CardChoice, PlayingCard, StoredLog, Unsubscribe } from '../ports.ts';
import { SeatConnections } from '../presence/seat-connections.ts';
import { type ReviewPorts, RoomReviews } from '../reviews/room-reviews.ts';
import type { SeatHolder } from '../room/command.ts';
import { logFieldsOf } from '../room/log-fields.ts';
import type { Policies, TablePolicy } from '../room/policy.ts';
import { ROOM, type Room, type RoomChange, roomWith } from '../room/room.ts';
import { Scheduler, type SchedulerPorts } from '../schedule/scheduler.ts';
import { StepClock } from '../schedule/step-clock.ts';
import { logTag } from '../secrets.ts';

export interface ActiveRoomPorts extends AggregatePorts, SchedulerPorts, ReviewPorts {
  readonly policies: Policies;
  readonly playingCard: (choice: CardChoice) => PlayingCard;
  /** Makes the reviews of tables that share them. */
  readonly shared: Pick<ReviewPorts, 'reviewer' | 'analyzer'>;
}

/** What somebody says of himself who opens a connection. */
export interface HandshakeInfo {
  /** Which table the other side has from an earlier connection; null when it has none. */
  readonly knows: Resume | null;
  /** Null where the other side does not say. */
  readonly from: ConnectionOrigin | null;
}

export interface ActiveRoom {
  readonly room: Room;
  readonly policy: TablePolicy;
  readonly card: PlayingCard;
  readonly broadcaster: Broadcaster;
  readonly connections: SeatConnections;
  /** When the open step was opened, by the clock of this server. */
  stepSince(): number;
  /** Lets somebody listen until the answer is called; a newer connection of the same person replaces the older one. */
  attach(connection: Connection, holder: SeatHolder | null, handshake: HandshakeInfo): Unsubscribe;
  /** Ends every timer; what was begun is finished and stored. */
  stop(): Promise<void>;
}

/** The room of this log, at work; null where the log is of no room, or of a closed one. */
export function activate(code: string, stored: StoredLog, ports: ActiveRoomPorts): ActiveRoom | null {
  const replayed = replay(ROOM, stored);
  if (replayed === null || replayed.states.at(-1)?.closed) return null;
  const [first] = replayed.states;
  const policy = ports.policies[first.mode];
  const log = ports.log.child({ room: logTag(code) });
  const card = ports.playingCard(first.card);
  const room: Room = new Aggregate(roomWith(policy), code, replayed, { ...ports, log });
  const history = new StateHistory(replayed.states);
  const connections = new SeatConnections(room, ports.nodes.id);
  const stepClock = new StepClock(ports.clock);
  const stepSince = () => stepClock.stepSince(room.state);
  const cardInfo = { id: card.card.id, name: card.card.name };
  const facts = (): TableFacts => {
    return { code, policy, card: cardInfo, stepSince: stepSince(), now: ports.clock.now() };
  };
  const broadcaster = new Broadcaster({ state: () => room.state, facts, history, connections });
  const fairnessKey = first.classCode ?? code;
  const making = policy.sharesReviews ? { ...ports, ...ports.shared } : ports;
  const reviews = new RoomReviews({ room, broadcaster, card, log, fairnessKey }, making);
  const scheduler = new Scheduler({ room, policy, card, stepSince }, { ...ports, log });

  const unsubscribe = room.onChange(({ before, state, states, recorded }: RoomChange) => {
    for (const { seq, event } of recorded) log.info({ seq, ...logFieldsOf(event) }, 'event');
    history.add(states);
    stepClock.changed(before, state);
    connections.changed();
    broadcaster.changed();
    reviews.changed(state, recorded);
    scheduler.wake();
    if (!state.closed) return;
    end();
    broadcaster.endAll(CLOSE.goingAway);
  });

  function end(): void {
    scheduler.stop();
    reviews.stop();
  }

  scheduler.wake();
  return {
    room,
    policy,
    card,
    broadcaster,
    connections,
    stepSince,
    attach: (connection, holder, { knows, from }) => {
      const seat = holder && connections.open(holder, from);
      const listener = broadcaster.add(connection, seat, knows);
      void enter();
      return () => {
        broadcaster.remove(listener);
        if (seat) connections.close(seat);
      };

      async function enter(): Promise<void> {
        if (seat) await connections.announce(seat);
        if (!broadcaster.has(listener)) return;
        broadcaster.greet(listener);
        const review = holder && reviews.waiting(holder);
        if (review) connection.send({ kind: 'review', ...review });
      }
    },
    async stop() {
      end();
      await room.drained();
      unsubscribe();
    },
  };
}
