// What one socket may do, as a union of states: it says hello, then it is seated or watches, then it is closed.
import {
  CLOSE,
  type ClientMessage,
  PROTOCOL_VERSIONS,
  ROOM_REJECTIONS,
  type RoomRejectionCode,
} from '../../shared-engine/index.ts';
import type { Answer, Rejection } from '../aggregate/decision.ts';
import { SerialQueue } from '../aggregate/serial-queue.ts';
import type { Connection } from '../delivery/broadcaster.ts';
import type { Log } from '../log.ts';
import type { Cancel, Clock, Measurements, Tickets, Unsubscribe } from '../ports.ts';
import type { SeatConnection } from '../presence/seat-connections.ts';
import type { ActiveRoom } from '../registry/active-room.ts';
import type { Registry } from '../registry/registry.ts';
import type { SeatHolder } from '../room/command.ts';
import { isHeldBy } from '../room/state.ts';
import { logTag } from '../secrets.ts';
import { readFrame } from './frame.ts';
import { TokenBucket } from './token-bucket.ts';

/** Frames over the limit that are answered before the socket is closed. */
const MAX_OVER_LIMIT = 100;
/** Time for the first frame. */
export const HELLO_MS = 10_000;

type State =
  | { readonly kind: 'expecting-hello'; readonly cancelTimeout: Cancel }
  | {
      readonly kind: 'seated';
      readonly live: ActiveRoom;
      readonly seat: SeatConnection;
      readonly detach: Unsubscribe;
    }
  | { readonly kind: 'watching'; readonly detach: Unsubscribe }
  | { readonly kind: 'closed' };

export interface SessionPorts {
  readonly registry: Registry;
  readonly tickets: Tickets;
  readonly clock: Clock;
  /** Frames a socket may send in the long run; twice as many at once. */
  readonly perSecond: number;
  readonly log: Log;
  readonly metrics: Pick<Measurements, 'rejected'> | null;
}

export class Session {
  readonly #connection: Connection;
  readonly #ports: SessionPorts;
  readonly #bucket: TokenBucket;
  /** Frames are answered in the order they came, the first one before the second is looked at. */
  readonly #frames = new SerialQueue();
  #overLimit = 0;
  #state: State;

  constructor(connection: Connection, ports: SessionPorts) {
    this.#connection = connection;
    this.#ports = ports;
    const { clock, perSecond } = ports;
    this.#bucket = new TokenBucket(clock, { perSecond, burst: 2 * perSecond });
    const cancelTimeout = clock.after(HELLO_MS, () => this.#end(CLOSE.helloExpected));
    this.#state = { kind: 'expecting-hello', cancelTimeout };
  }

  /** The socket is gone, whoever ended it. */
  closed(): void {
    const state = this.#state;
    this.#state = { kind: 'closed' };
    if (state.kind === 'expecting-hello') state.cancelTimeout();
    if (state.kind === 'seated' || state.kind === 'watching') state.detach();
  }

  async receive(data: Uint8Array, isBinary: boolean): Promise<void> {
    if (this.#state.kind === 'closed') return;
    if (!this.#bucket.take()) return this.#rejectTooFast();
    return this.#frames.run(() => this.#read(data, isBinary));
  }

  async #read(data: Uint8Array, isBinary: boolean): Promise<void> {
    const frame = isBinary ? ({ ok: false, id: null } as const) : readFrame(data);
    if (!frame.ok) return this.#reject(frame.id, 'bad-frame');
    const { message } = frame;
    switch (this.#state.kind) {
      case 'expecting-hello':
        if (message.kind === 'hello') return this.#hello(message, this.#state.cancelTimeout);
        return this.#end(CLOSE.helloExpected);
      case 'watching':
        return this.#reject(message.id, message.kind === 'hello' ? 'bad-frame' : 'not-seated');
      case 'seated':
        if (message.kind === 'hello') return this.#reject(message.id, 'bad-frame');
        return this.#answer(message.id, await carryOut(this.#state, message));
      case 'closed':
        return;
    }
  }

  async #hello(message: ClientMessage & { kind: 'hello' }, cancelTimeout: Cancel): Promise<void> {
    cancelTimeout();
    const version = commonVersion(message.versions);
    if (version === null) return this.#end(CLOSE.versionUnknown);
    const admitted = await this.#redeem(message.ticket);
    if (this.#isClosed()) return;
    if (admitted === null) return this.#end(CLOSE.ticketRejected);
    const { live, holder } = admitted;
    // Many may have got a ticket while there was room.
    if (holder === null && !live.broadcaster.hasRoomForSpectators) return this.#end(CLOSE.ticketRejected);
    this.#connection.send({ kind: 'welcome', id: message.id, version });
    const { resume = null, from = null } = message;
    this.#ports.log.info({ room: logTag(live.room.code), seat: holder?.seat ?? 'none' }, 'entered');
    const { seat, detach } = live.attach(this.#connection, holder, { knows: resume, from });
    this.#state = seat ? { kind: 'seated', live, seat, detach } : { kind: 'watching', detach };
  }

  /** The room and the seat a ticket opens; null when the ticket is no good or the seat was vacated since. */
  async #redeem(ticket: string): Promise<{ live: ActiveRoom; holder: SeatHolder | null } | null> {
    try {
      const grant = await this.#ports.tickets.redeem(ticket);
      const live = grant && (await this.#ports.registry.find(grant.code));
      if (!grant || !live) return null;
      const { holder, shown } = grant;
      if (holder && !isHeldBy(live.room.state, holder)) return null;
      return holder && shown && !(await isStillGood(live, holder, shown)) ? null : { live, holder };
    } catch {
      return null;
    }
  }

  #answer(id: string, answer: Answer): void {
    if (answer.ok) this.#connection.send({ kind: 'ack', id });
    else this.#sendRejection(id, answer);
  }

  /** Asked anew after a wait, in which the socket may have gone. */
  #isClosed(): boolean {
    return this.#state.kind === 'closed';
  }

  #end(code: number): void {
    this.closed();
    this.#connection.end(code);
  }

  #reject(id: string | null, code: RoomRejectionCode): void {
    this.#sendRejection(id, { code, message: ROOM_REJECTIONS[code] });
  }

  #sendRejection(id: string | null, { code, message }: Omit<Rejection, 'ok'>): void {
    const { metrics, log } = this.#ports;
    metrics?.rejected('frame', code);
    log.debug({ rejection: code }, 'a frame was rejected');
    this.#connection.send({ kind: 'rejected', id, code, message });
  }

  #rejectTooFast(): void {
    if (++this.#overLimit > MAX_OVER_LIMIT) this.#end(CLOSE.tooManyFrames);
    else this.#reject(null, 'too-fast');
  }
}

/** The secret that the ticket was got with is from now on the only one; false where another one has replaced it. */
async function isStillGood({ room }: ActiveRoom, holder: SeatHolder, shown: string): Promise<boolean> {
  const confirmed = await room.submit({ kind: 'confirm-secret', holder, shown });
  // Where it cannot be stored just now, nothing has replaced it either.
  return confirmed.ok || confirmed.code === 'try-later';
}

/** Ids are the client's own, so they count within one person's stay on a seat. */
async function carryOut(
  { live, seat }: State & { kind: 'seated' },
  message: Exclude<ClientMessage, { kind: 'hello' }>,
): Promise<Answer> {
  const { holder, name, from, known } = seat;
  const over = { name, from, known };
  const id = `${holder.since}/${message.id}`;
  switch (message.kind) {
    case 'choose': {
      const { round, seat, choice } = message;
      return live.room.submit({ kind: 'choose', holder, over, round, seat, choice }, id);
    }
    case 'action':
      return live.room.submit({ kind: 'action', holder, over, action: message.action }, id);
    // Nothing of the room: it ends with the connection and is not stored.
    case 'analyzed-by':
      return live.analyzedBy(seat, message);
  }
}

function commonVersion([lowest, highest]: readonly [number, number]): number | null {
  const version = Math.min(highest, PROTOCOL_VERSIONS.highest);
  return version >= Math.max(lowest, PROTOCOL_VERSIONS.lowest) ? version : null;
}
