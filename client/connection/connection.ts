// Keeps one room's socket alive: ticket, hello, orders that wait for their answer, and coming back after a cut.
import { CLOSE, HEARTBEAT_MS, PROTOCOL_VERSIONS, type ServerMessage } from '../../shared-engine/index.ts';
import type { ApiResult } from './api.ts';
import { backoffMs } from './backoff.ts';
import { readFrame } from './frame.ts';
import { trackLastTable } from './last-table.ts';
import type { ClientRequest, PendingRequests } from './pending.ts';
import type { ClientSocket, OpenSocket, StartTimer } from './wire.ts';

export type EndReason = 'replaced' | 'outdated' | 'no-room';

/** How it stands with the server. */
export type ConnectionState =
  | { readonly kind: 'connecting' }
  | { readonly kind: 'open' }
  /** Connected, but the server can keep nothing just now; orders are answered with a refusal. */
  | { readonly kind: 'looking' }
  /** Cut off; the next attempt comes by itself. */
  | { readonly kind: 'waiting'; readonly failures: number }
  /** No further attempt without the player: another page took over, or this page is too old, or the room is gone. */
  | { readonly kind: 'ended'; readonly reason: EndReason };

export interface ConnectionPorts {
  readonly askTicket: () => Promise<ApiResult<{ readonly ticket: string }>>;
  readonly openSocket: OpenSocket;
  readonly startTimer: StartTimer;
  readonly newId: () => string;
  /** 0 ≤ chance < 1. */
  readonly random: () => number;
  readonly pending: PendingRequests;
  readonly onState: (state: ConnectionState) => void;
  readonly onMessage: (message: ServerMessage) => void;
}

/** A line that stays silent this long after an order is dead, whatever the browser thinks of it. */
const ANSWER_MS = 8_000;
/** So is one on which no sign of life came for this long. */
const SILENCE_MS = 2.5 * HEARTBEAT_MS;

/** Pause before orders are sent again that the server could not keep. */
const AGAIN_MS = 2_000;

export interface Connection {
  /** Opens, or opens anew with a fresh ticket. */
  start(): void;
  /** Tries at once instead of waiting out the pause. */
  retryNow(): void;
  /** Keeps the order until it is answered; sends it now when the line is open. */
  send(order: ClientRequest): void;
  stop(): void;
}

export function connect(ports: ConnectionPorts): Connection {
  let state: ConnectionState = { kind: 'connecting' };
  let wire: ClientSocket | null = null;
  let failures = 0;
  let callOff = () => {};
  let callOffWatch = () => {};
  let last = trackLastTable();
  const page = ports.newId();
  // A socket or ticket of an earlier attempt may still speak; its number tells it from the present one.
  let attempt = 0;

  const enter = (next: ConnectionState) => {
    state = next;
    ports.onState(next);
  };

  const send = (message: object) => wire?.send(JSON.stringify(message));

  function drop() {
    attempt++;
    callOff();
    callOffWatch();
    wire?.close();
    wire = null;
  }

  /** `hint`: how long the server asked to wait, in milliseconds. */
  function wait(hint: number | null = null) {
    drop();
    const pause = hint ?? backoffMs(failures, ports.random());
    failures++;
    enter({ kind: 'waiting', failures });
    callOff = ports.startTimer(pause, () => void begin());
  }

  function end(reason: EndReason) {
    drop();
    enter({ kind: 'ended', reason });
  }

  /** Gives the present attempt up unless something is heard in time. */
  function watch(ms: number) {
    callOffWatch();
    callOffWatch = ports.startTimer(ms, () => wait());
  }

  async function begin() {
    drop();
    const mine = attempt;
    // Longer each time: a server that everybody comes back to at once must not do the work of coming back in vain.
    watch(ANSWER_MS * 2 ** Math.min(failures, 3));
    if (failures === 0) enter({ kind: 'connecting' });
    const answer = await ports.askTicket();
    if (mine !== attempt) return;
    if (!answer.ok) return answer.code === 'no-such-room' ? end('no-room') : wait();
    wire = ports.openSocket({
      opened: () => {
        if (mine === attempt) hello(answer.value.ticket);
      },
      text: (data) => {
        if (mine === attempt) receive(data);
      },
      closed: (code, reason = '') => {
        if (mine === attempt) closed(code, reason);
      },
    });
  }

  function hello(ticket: string) {
    const { lowest, highest } = PROTOCOL_VERSIONS;
    const from = { page, nth: attempt };
    send({ kind: 'hello', id: ports.newId(), versions: [lowest, highest], ticket, from, ...last.resume() });
  }

  function receive(data: string) {
    if (state.kind === 'open' || state.kind === 'looking') watch(SILENCE_MS);
    const frame = readFrame(data);
    if (frame === null) return;
    const message = last.expand(frame);
    if (message === null) return anew();
    if (message.kind === 'heartbeat') return;
    if (message.kind === 'storage') return enter({ kind: message.writable ? 'open' : 'looking' });
    if (message.kind === 'welcome') {
      failures = 0;
      enter({ kind: 'open' });
      watch(SILENCE_MS);
      sendPending();
      return;
    }
    // What could not be kept just now may have been kept all the same: it is asked again, with the same id.
    if (message.kind === 'rejected' && message.code === 'try-later') askAgain();
    else if ((message.kind === 'ack' || message.kind === 'rejected') && message.id !== null) {
      ports.pending.complete(message.id);
    }
    ports.onMessage(message);
  }

  /** What the server believes this page to have is not here, so the next line asks for all of it. */
  function anew() {
    last = trackLastTable();
    wait();
  }

  function sendPending() {
    for (const order of ports.pending.all()) send(order);
  }

  function askAgain() {
    const mine = attempt;
    callOff();
    callOff = ports.startTimer(AGAIN_MS, () => {
      if (mine === attempt) sendPending();
    });
  }

  function closed(code: number, reason: string) {
    callOffWatch();
    wire = null;
    if (code === CLOSE.replaced) end('replaced');
    else if (code === CLOSE.versionUnknown) end('outdated');
    else wait(code === CLOSE.restarting && /^\d{1,4}$/.test(reason) ? Number(reason) : null);
  }

  return {
    start() {
      failures = 0;
      // Whoever starts anew may have another seat by now, and news told to a watcher leaves the seat's own tiles out.
      last = trackLastTable();
      void begin();
    },
    retryNow() {
      if (state.kind === 'waiting') void begin();
    },
    send(order) {
      ports.pending.add(order);
      if (state.kind !== 'open' && state.kind !== 'looking') return;
      send(order);
      const mine = attempt;
      ports.startTimer(ANSWER_MS, () => {
        const waiting = ports.pending.all().some(({ id }) => id === order.id);
        if (waiting && mine === attempt) void begin();
      });
    },
    stop: drop,
  };
}
