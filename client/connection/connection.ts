// Keeps one room's socket open: ticket, hello, requests that wait for their answer, and reconnecting.
import {
  CLOSE,
  type ClientMessage,
  HEARTBEAT_MS,
  PROTOCOL_VERSIONS,
  type RejectionCode,
  type ServerMessage,
  type Step,
} from '../../shared-engine/index.ts';
import type { ApiResult } from './api.ts';
import { backoffMs } from './backoff.ts';
import { readFrame } from './frame.ts';
import { trackLastTable } from './last-table.ts';
import type { ClientRequest, PendingRequests } from './pending.ts';
import type { Cancel, ClientSocket, OpenSocket, StartTimer } from './socket.ts';

export type EndReason = 'replaced' | 'outdated' | 'no-room' | 'seat-lost';

/** Where a server's table was left: its round, and the step that was open. */
export interface LeftStep {
  readonly round: number;
  readonly step: Step;
}

export type ConnectionState =
  | { readonly kind: 'connecting' }
  | { readonly kind: 'open' }
  /** Connected, but the server cannot save anything just now; requests are rejected. */
  | { readonly kind: 'read-only' }
  /** Cut off; the next attempt comes by itself. */
  | { readonly kind: 'waiting'; readonly failures: number }
  /** The player went on in the page, without the server (rules G1–G4). */
  | { readonly kind: 'here'; readonly isServerBack: boolean; readonly left: LeftStep }
  /** No further attempt without the player: another page took over, this page is too old, the seat or the room is gone. */
  | { readonly kind: 'ended'; readonly reason: EndReason };

export interface ConnectionPorts {
  /** Aborted once nobody waits for the answer any more. */
  readonly askTicket: (signal: AbortSignal) => Promise<ApiResult<{ readonly ticket: string }>>;
  readonly openSocket: OpenSocket;
  readonly startTimer: StartTimer;
  readonly newId: () => string;
  /** 0 ≤ random < 1. */
  readonly random: () => number;
  readonly pending: PendingRequests;
  readonly onState: (state: ConnectionState) => void;
  readonly onMessage: (message: ServerMessage) => void;
}

/** A socket that is silent this long after a request is given up, whatever the browser says of it. */
const ANSWER_TIMEOUT_MS = 8_000;
/** So is one on which no heartbeat came for this long: a player is told within ten seconds, also while nothing is sent. */
const SILENCE_TIMEOUT_MS = 2.25 * HEARTBEAT_MS;

/** Pause before requests are sent again that the server could not save. */
const RESEND_MS = 2_000;

/** Rejections that say nothing of the request, which may even have been saved: it is sent again, with the same id. */
const SENT_AGAIN: readonly RejectionCode[] = ['try-later', 'too-fast', 'newer-connection'];

export interface Connection {
  /** Opens, or opens anew with a fresh ticket. */
  start(): void;
  /** Tries at once instead of waiting out the pause. */
  retryNow(): void;
  /** Stores the request until it is answered; sends it now when the connection is open. */
  send(request: ClientRequest): void;
  stop(): void;
}

/** Who analyzes the choices of this page's seat in a round. */
export type AnalyzedBy = ClientMessage & { kind: 'analyzed-by' };

export interface ServerConnection extends Connection {
  /** Says it now where the connection is open, and first on each one that is opened later; nothing waits for an answer. */
  announce(said: AnalyzedBy): void;
}

/** A connection, and for a table of the server what there is without it. */
export interface RoomConnection extends Connection {
  readonly pendingCount: () => number;
  /** Whether the round may go on in the page. */
  readonly canPlayOn?: () => boolean;
  readonly playOn?: () => void;
  readonly backToServer?: () => void;
}

export function connect(ports: ConnectionPorts): ServerConnection {
  let state: ConnectionState = { kind: 'connecting' };
  let socket: ClientSocket | null = null;
  let failures = 0;
  let cancelRetry: Cancel = () => {};
  let cancelTimeout: Cancel = () => {};
  let answerTimeouts: Cancel[] = [];
  let lastTable = trackLastTable();
  let announced: AnalyzedBy | null = null;
  const page = ports.newId();
  // A socket or ticket of an earlier attempt may still report; its number tells it from the present one.
  let attempt = 0;
  let ticketRequest = new AbortController();

  const enter = (next: ConnectionState) => {
    state = next;
    ports.onState(next);
  };

  const write = (message: object) => socket?.send(JSON.stringify(message));
  const isConnected = () => state.kind === 'open' || state.kind === 'read-only';

  function drop() {
    attempt++;
    // Its answer, come late, would replace a newer secret of the seat by one that is worth nothing any more.
    ticketRequest.abort();
    cancelRetry();
    cancelTimeout();
    for (const cancel of answerTimeouts) cancel();
    answerTimeouts = [];
    socket?.close();
    socket = null;
  }

  /** `hint`: how long the server asked to wait, in milliseconds. */
  function retryLater(hint: number | null = null) {
    drop();
    const pause = hint ?? backoffMs(failures, ports.random());
    failures++;
    enter({ kind: 'waiting', failures });
    cancelRetry = ports.startTimer(pause, () => void open());
  }

  function end(reason: EndReason) {
    drop();
    enter({ kind: 'ended', reason });
  }

  /** Gives the present attempt up unless something arrives in time. */
  function restartTimeout(ms: number) {
    cancelTimeout();
    cancelTimeout = ports.startTimer(ms, () => retryLater());
  }

  async function open() {
    drop();
    const current = attempt;
    // Longer each time: a server that all pages return to at once must not do that work in vain.
    restartTimeout(ANSWER_TIMEOUT_MS * 2 ** Math.min(failures, 3));
    if (failures === 0) enter({ kind: 'connecting' });
    ticketRequest = new AbortController();
    const answer = await ports.askTicket(ticketRequest.signal);
    if (current !== attempt) return;
    if (!answer.ok) {
      if (answer.code === 'no-such-room') return end('no-room');
      if (answer.code === 'outdated') return end('outdated');
      return answer.code === 'old-secret' ? end('seat-lost') : retryLater();
    }
    socket = ports.openSocket({
      opened: () => {
        if (current === attempt) sendHello(answer.value.ticket);
      },
      text: (data) => {
        if (current === attempt) receive(data);
      },
      closed: (code, reason = '') => {
        if (current === attempt) closed(code, reason);
      },
    });
  }

  function sendHello(ticket: string) {
    const { lowest, highest } = PROTOCOL_VERSIONS;
    const from = { page, nth: attempt };
    write({
      kind: 'hello',
      id: ports.newId(),
      versions: [lowest, highest],
      ticket,
      from,
      ...lastTable.resume(),
    });
  }

  function receive(data: string) {
    if (isConnected()) restartTimeout(SILENCE_TIMEOUT_MS);
    const frame = readFrame(data);
    if (frame === null) return;
    const message = lastTable.expand(frame);
    if (message === null) return resync();
    if (message.kind === 'heartbeat') return;
    if (message.kind === 'storage') return enter({ kind: message.writable ? 'open' : 'read-only' });
    if (message.kind === 'welcome') {
      failures = 0;
      enter({ kind: 'open' });
      restartTimeout(SILENCE_TIMEOUT_MS);
      if (announced !== null) write(announced);
      sendPending();
      return;
    }
    if (message.kind === 'rejected' && SENT_AGAIN.includes(message.code)) resendLater();
    else if ((message.kind === 'ack' || message.kind === 'rejected') && message.id !== null) {
      ports.pending.complete(message.id);
    }
    ports.onMessage(message);
  }

  /** The table that a delta builds on is not here, so the next connection asks for all of it. */
  function resync() {
    lastTable = trackLastTable();
    retryLater();
  }

  function sendPending() {
    for (const request of ports.pending.all()) write(request);
  }

  function resendLater() {
    const current = attempt;
    cancelRetry();
    cancelRetry = ports.startTimer(RESEND_MS, () => {
      if (current === attempt) sendPending();
    });
  }

  function closed(code: number, reason: string) {
    cancelTimeout();
    socket = null;
    if (code === CLOSE.replaced) end('replaced');
    else if (code === CLOSE.versionUnknown) end('outdated');
    else retryLater(code === CLOSE.restarting && /^\d{1,4}$/.test(reason) ? Number(reason) : null);
  }

  return {
    start() {
      failures = 0;
      // Whoever starts anew may have another seat by now, and a spectator's table lacks the seat's own tiles.
      lastTable = trackLastTable();
      void open();
    },
    retryNow() {
      if (state.kind === 'waiting') void open();
    },
    send(request) {
      ports.pending.add(request);
      if (!isConnected()) return;
      write(request);
      const reopenUnlessAnswered = () => {
        if (ports.pending.all().some(({ id }) => id === request.id)) void open();
      };
      answerTimeouts.push(ports.startTimer(ANSWER_TIMEOUT_MS, reopenUnlessAnswered));
    },
    announce(said) {
      announced = said;
      if (isConnected()) write(said);
    },
    stop() {
      announced = null;
      drop();
    },
  };
}
