// What one socket may do, as a union of states: it says hello, then it is seated or watches, then it is closed.
import {
  CLOSE,
  type ClientMessage,
  PROTOCOL_VERSIONS,
  ROOM_REFUSALS,
  type RoomRefusalCode,
} from '../../shared-engine/index.ts';
import type { Clock, Tickets, Undo } from '../ports.ts';
import type { Answer } from '../room/answers.ts';
import type { Owner } from '../room/command.ts';
import type { LiveRoom } from '../room/live.ts';
import { Mailbox } from '../room/mailbox.ts';
import type { Registry } from '../room/registry.ts';
import { personAt } from '../room/state.ts';
import type { Line } from '../room/table.ts';
import { Bucket } from './bucket.ts';
import { readFrame } from './frame.ts';

/** Frames over the pace that are answered before the socket is closed. */
const MOST_OVER = 100;
/** Time for the first frame. */
export const HELLO_MS = 10_000;

type State =
  | { readonly kind: 'expecting-hello'; readonly callOff: Undo }
  | { readonly kind: 'seated'; readonly live: LiveRoom; readonly owner: Owner; readonly detach: Undo }
  | { readonly kind: 'watching'; readonly detach: Undo }
  | { readonly kind: 'closed' };

export interface SessionPorts {
  readonly registry: Registry;
  readonly tickets: Tickets;
  readonly clock: Clock;
  /** Frames a socket may send in the long run; twice as many at once. */
  readonly perSecond: number;
}

export class Session {
  readonly #line: Line;
  readonly #ports: SessionPorts;
  readonly #bucket: Bucket;
  /** Frames are answered in the order they came, the first one before the second is looked at. */
  readonly #mailbox = new Mailbox();
  #over = 0;
  #state: State;

  constructor(line: Line, ports: SessionPorts) {
    this.#line = line;
    this.#ports = ports;
    const { clock, perSecond } = ports;
    this.#bucket = new Bucket(clock, { perSecond, burst: 2 * perSecond });
    const callOff = clock.after(HELLO_MS, () => this.#end(CLOSE.helloExpected));
    this.#state = { kind: 'expecting-hello', callOff };
  }

  /** The socket is gone, whoever ended it. */
  closed(): void {
    const state = this.#state;
    this.#state = { kind: 'closed' };
    if (state.kind === 'expecting-hello') state.callOff();
    if (state.kind === 'seated' || state.kind === 'watching') state.detach();
  }

  async receive(data: Uint8Array, isBinary: boolean): Promise<void> {
    if (this.#state.kind === 'closed') return;
    if (!this.#bucket.take()) return this.#tooFast();
    return this.#mailbox.run(() => this.#read(data, isBinary));
  }

  async #read(data: Uint8Array, isBinary: boolean): Promise<void> {
    const frame = isBinary ? ({ ok: false, id: null } as const) : readFrame(data);
    if (!frame.ok) return this.#refuse(frame.id, 'bad-frame');
    const { message } = frame;
    switch (this.#state.kind) {
      case 'expecting-hello':
        if (message.kind === 'hello') return this.#hello(message, this.#state.callOff);
        return this.#end(CLOSE.helloExpected);
      case 'watching':
        return this.#refuse(message.id, message.kind === 'hello' ? 'bad-frame' : 'not-seated');
      case 'seated':
        if (message.kind === 'hello') return this.#refuse(message.id, 'bad-frame');
        return this.#answer(message.id, await command(this.#state, message));
      case 'closed':
        return;
    }
  }

  async #hello(message: ClientMessage & { kind: 'hello' }, callOff: Undo): Promise<void> {
    callOff();
    const version = commonVersion(message.versions);
    if (version === null) return this.#end(CLOSE.versionUnknown);
    const entrance = await this.#entrance(message.ticket);
    if (this.#isClosed()) return;
    if (entrance === null) return this.#end(CLOSE.ticketRefused);
    const { live, owner } = entrance;
    this.#line.send({ kind: 'welcome', id: message.id, version });
    const { resume = null, from = null } = message;
    const detach = live.attach(this.#line, owner, { knows: resume, from });
    this.#state = owner ? { kind: 'seated', live, owner, detach } : { kind: 'watching', detach };
  }

  /** The room and the seat a ticket opens; null when the ticket is no good or the seat has been freed since. */
  async #entrance(ticket: string): Promise<{ live: LiveRoom; owner: Owner | null } | null> {
    try {
      const grant = await this.#ports.tickets.redeem(ticket);
      const live = grant && (await this.#ports.registry.find(grant.code));
      if (!grant || !live) return null;
      const { owner } = grant;
      if (owner && personAt(live.room.state, owner.seat, owner.since) === null) return null;
      return { live, owner };
    } catch {
      return null;
    }
  }

  #answer(id: string, answer: Answer): void {
    if (answer.ok) this.#line.send({ kind: 'ack', id });
    else this.#line.send({ kind: 'refused', id, code: answer.code, sentence: answer.sentence });
  }

  /** Asked anew after a wait, in which the socket may have gone. */
  #isClosed(): boolean {
    return this.#state.kind === 'closed';
  }

  #end(code: number): void {
    this.closed();
    this.#line.end(code);
  }

  #refuse(id: string | null, code: RoomRefusalCode): void {
    this.#line.send({ kind: 'refused', id, code, sentence: ROOM_REFUSALS[code] });
  }

  #tooFast(): void {
    if (++this.#over > MOST_OVER) this.#end(CLOSE.tooManyFrames);
    else this.#refuse(null, 'too-fast');
  }
}

/** Ids are the client's own, so they count within one person's stay on a seat. */
function command(
  { live, owner }: State & { kind: 'seated' },
  message: Exclude<ClientMessage, { kind: 'hello' }>,
): Promise<Answer> {
  const id = `${owner.since}/${message.id}`;
  switch (message.kind) {
    case 'choose': {
      const { round, seat, choice } = message;
      return live.room.submit({ kind: 'choose', owner, round, seat, choice }, id);
    }
    case 'act':
      return live.room.submit({ kind: 'act', owner, act: message.act }, id);
  }
}

function commonVersion([lowest, highest]: readonly [number, number]): number | null {
  const version = Math.min(highest, PROTOCOL_VERSIONS.highest);
  return version >= Math.max(lowest, PROTOCOL_VERSIONS.lowest) ? version : null;
}
