// A room at work in this process: its aggregate with connections, broadcaster, scheduler and reviews around it.
import { CLOSE, type ClientMessage, type ConnectionOrigin, type Resume } from '../../shared-engine/index.ts';
import { Aggregate, type AggregatePorts } from '../aggregate/aggregate.ts';
import { ACCEPTED, type Answer, reject } from '../aggregate/decision.ts';
import { type Replayed, replay } from '../aggregate/replay.ts';
import type { Timing } from '../config.ts';
import type { TableFacts } from '../delivery/audience.ts';
import { Broadcaster, type Connection, type Listener } from '../delivery/broadcaster.ts';
import { StateHistory } from '../delivery/state-history.ts';
import type { Log } from '../log.ts';
import type { CardChoice, PlayingCard, StoredLog, Unsubscribe } from '../ports.ts';
import { type SeatConnection, SeatConnections } from '../presence/seat-connections.ts';
import { type ReviewPorts, RoomReviews } from '../reviews/room-reviews.ts';
import type { SeatHolder } from '../room/command.ts';
import { logFieldsOf } from '../room/log-fields.ts';
import type { Policies, TablePolicy } from '../room/policy.ts';
import { ROOM, type Room, type RoomChange, roomWith } from '../room/room.ts';
import { heldAt, holderAt, type RoomState } from '../room/state.ts';
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

/** Somebody who listens; `seat` is null for whoever watches. */
export interface Attached {
  readonly seat: SeatConnection | null;
  readonly detach: Unsubscribe;
}

/** The room of this log, at work; null where the log is of no room, or of a closed one. */
export function activate(code: string, stored: StoredLog, ports: ActiveRoomPorts): ActiveRoom | null {
  const replayed = replay(ROOM, stored);
  if (replayed === null || replayed.states.at(-1)?.closed) return null;
  return new ActiveRoom(code, replayed, ports);
}

export class ActiveRoom {
  readonly room: Room;
  readonly policy: TablePolicy;
  readonly card: PlayingCard;
  readonly broadcaster: Broadcaster;
  readonly connections: SeatConnections;
  readonly #timing: Pick<Timing, 'disconnectGrace'>;
  readonly #stepClock: StepClock;
  readonly #reviews: RoomReviews;
  readonly #scheduler: Scheduler;
  readonly #subscriptions: readonly Unsubscribe[];

  /** Follows the room until `stop`. */
  constructor(code: string, replayed: Replayed<RoomState>, ports: ActiveRoomPorts) {
    const [{ mode, card, classCode }] = replayed.states;
    const log = ports.log.child({ room: logTag(code) });
    this.policy = ports.policies[mode];
    this.#timing = ports.timing;
    this.card = ports.playingCard(card);
    this.room = new Aggregate(roomWith(this.policy), code, replayed, { ...ports, log });
    this.#stepClock = new StepClock(ports.clock);
    this.connections = new SeatConnections(this.room, ports.nodes.id);
    const history = new StateHistory(replayed.states);
    this.broadcaster = new Broadcaster({
      state: () => this.room.state,
      facts: () => this.#facts(ports.clock.now()),
      history,
      isOpen: this.policy.isOpen,
      connections: this.connections,
    });
    const { room, broadcaster, connections } = this;
    const reviewPorts = this.policy.sharesReviews ? { ...ports, ...ports.shared } : ports;
    const fairnessKey = classCode ?? code;
    this.#reviews = new RoomReviews(
      { room, broadcaster, connections, card: this.card, log, fairnessKey },
      reviewPorts,
    );
    this.#scheduler = new Scheduler(this, { ...ports, log });
    this.#subscriptions = this.#inOrder(history, log).map((listener) => room.onChange(listener));
    this.#scheduler.wake();
  }

  /** When the open step was opened, by the clock of this server. */
  stepSince(): number {
    return this.#stepClock.stepSince(this.room.state);
  }

  /** Lets somebody listen until `detach` is called; a newer connection of the same person replaces the older one. */
  attach(connection: Connection, holder: SeatHolder | null, { knows, from }: HandshakeInfo): Attached {
    const seat = holder && this.connections.open(holder, from);
    const listener = this.broadcaster.add(connection, seat, knows);
    void this.#greet(listener);
    const detach = () => {
      this.broadcaster.remove(listener);
      if (!seat) return;
      this.connections.close(seat);
      this.#reviews.pagesChanged();
    };
    return { seat, detach };
  }

  /** The page at this connection says who analyzes the choices of its seat in a round. */
  analyzedBy(seat: SeatConnection, { round, by }: ClientMessage & { kind: 'analyzed-by' }): Answer {
    if (!this.connections.isHeld(seat)) return reject('not-seated');
    if (this.connections.isReplaced(seat)) return reject('newer-connection');
    seat.analyzes = by === 'page' ? round : null;
    this.#reviews.pagesChanged();
    return ACCEPTED;
  }

  /** Ends every timer; what was begun is finished and stored. */
  async stop(): Promise<void> {
    this.#end();
    await this.room.drained();
    for (const unsubscribe of this.#subscriptions) unsubscribe();
  }

  /** What happens after every change. One that fails leaves the others told. */
  #inOrder(history: StateHistory, log: Log): ((change: RoomChange) => void)[] {
    return [
      ({ recorded }) => {
        for (const { seq, event } of recorded) log.info({ seq, ...logFieldsOf(event) }, 'event');
      },
      ({ states }) => history.add(states),
      ({ before, state }) => this.#stepClock.changed(before, state),
      () => this.connections.changed(),
      () => this.broadcaster.changed(),
      ({ state, recorded }) => this.#reviews.changed(state, recorded),
      ({ state, recorded }) => this.#warn(state, recorded),
      () => this.#scheduler.wake(),
      ({ state }) => {
        if (!state.closed) return;
        this.#end();
        this.broadcaster.endAll(CLOSE.goingAway);
      },
    ];
  }

  async #greet(listener: Listener): Promise<void> {
    const { seat, connection } = listener;
    const holder = seat?.holder;
    const warn = holder && holderAt(this.room.state, holder)?.warn;
    if (seat) await this.connections.announce(seat);
    if (!this.broadcaster.has(listener)) return;
    this.broadcaster.greet(listener);
    if (warn) connection.send({ kind: 'old-secret-shown' });
    const review = seat && this.#reviews.waiting(seat.holder);
    if (review) connection.sendText(review);
  }

  /** A holder who is away is told when coming back. */
  #warn(state: RoomState, recorded: RoomChange['recorded']): void {
    for (const { event } of recorded) {
      if (event.kind !== 'old-secret-shown') continue;
      const { seat } = event;
      const held = heldAt(state, seat);
      if (held === null) continue;
      this.broadcaster.sendTo({ seat, since: held.since }, { kind: 'old-secret-shown' });
    }
  }

  #facts(now: number): TableFacts {
    const { id, name } = this.card.file;
    const { room, policy } = this;
    const absentMs = policy.replacesAbsent ? this.#timing.disconnectGrace : null;
    return { code: room.code, policy, card: { id, name }, absentMs, stepSince: this.stepSince(), now };
  }

  #end(): void {
    this.#scheduler.stop();
    this.#reviews.stop();
  }
}
