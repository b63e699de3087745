// One seat of our own server as the driver plays it, checking that what was acknowledged is in the seat's record.
import { WebSocket } from 'ws';
import type { ClientMessage, ServerMessage } from '../../../shared-engine/protocol/messages.ts';
import { SOCKET_PATH } from '../../../shared-engine/protocol/paths.ts';
import { applyDelta, type Table, type TableDelta } from '../../../shared-engine/protocol/table.ts';
import type { Choice } from '../../../shared-engine/rules/exchange/command.ts';
import { stepOf } from '../../../shared-engine/rules/exchange/pending-decision.ts';
import { pendingDecision } from '../../../shared-engine/rules/view/pending-decision.ts';
import type { SeatView } from '../../../shared-engine/rules/view/view.ts';
import type { SeatEvents } from './driven-table.ts';

/** What went wrong, counted over all seats. */
export interface Losses {
  /** Answers that were acknowledged and are not in the seat's own record. */
  lost: number;
  /** Answers that were acknowledged twice or stand in the record twice. */
  doubled: number;
}

interface Answered {
  readonly step: string;
  readonly tiles: readonly string[];
}

export class OwnSeat {
  readonly #url: string;
  readonly #events: SeatEvents;
  readonly #losses: Losses;
  /** The last round whose review has come, with all that belongs to it. */
  reviewed = 0;
  #lastRound = Number.POSITIVE_INFINITY;
  readonly #unanswered = new Map<string, ClientMessage>();
  #socket: WebSocket | null = null;
  #entered: () => void = () => {};
  #ids = 0;
  #table: Table | null = null;
  /** The last answer, until its step is over. */
  #answered: Answered | null = null;
  #asked: string | null = null;

  constructor(url: string, events: SeatEvents, losses: Losses) {
    this.#url = `${url.replace('http', 'ws')}${SOCKET_PATH}`;
    this.#events = events;
    this.#losses = losses;
  }

  /** The record of the round as this seat knows it, as text; comparing two tells whether anything was lost. */
  get record(): string {
    const view = this.#table?.view;
    return view?.audience === 'seat' ? JSON.stringify([this.#table?.round, view.rack, view.record]) : '';
  }

  /** Commands that wait for their acknowledgement. */
  get unanswered(): number {
    return this.#unanswered.size;
  }

  /** Connects and resolves with the first table on the new connection. */
  async enter(ticket: string): Promise<void> {
    const socket = new WebSocket(this.#url, { perMessageDeflate: false, skipUTF8Validation: true });
    this.#socket = socket;
    const entered = new Promise<void>((resolve, reject) => {
      this.#entered = resolve;
      socket.once('error', reject);
      socket.once('close', (code) => reject(new Error(`The server closed a connection with ${code}.`)));
    });
    socket.on('message', (data: Buffer) => this.#hear(JSON.parse(data.toString())));
    socket.once('open', () => {
      this.#send({ kind: 'hello', id: `h${++this.#ids}`, versions: [1, 1], ticket });
      // What was not acknowledged before is sent again with its id, as the page does.
      for (const message of this.#unanswered.values()) this.#send(message);
    });
    await entered;
  }

  ready(): void {
    this.#command({ kind: 'action', id: this.#newId(), action: { kind: 'ready', ready: true } });
  }

  /** After this round the seat is not ready for another deal, but before it is, where it was not so far. */
  endAfter(round: number): void {
    const table = this.#table;
    const waits = table?.view?.stage.phase === 'closed' && table.round >= this.#lastRound;
    this.#lastRound = round;
    if (waits && table.round < round) this.ready();
  }

  answer(): void {
    const table = this.#table;
    if (table?.view?.audience !== 'seat' || this.#asked === null) throw new Error('Nothing is asked.');
    const { you, round, view } = table;
    const choice = choiceFor(view);
    this.#answered = { step: this.#asked, tiles: choice.kind === 'pass' ? choice.tiles : [] };
    this.#asked = null;
    this.#command({ kind: 'choose', id: this.#newId(), round, seat: you ?? 0, choice });
  }

  /** Cuts the connection, as a lost network does; resolves when it is closed. */
  async cut(): Promise<void> {
    const socket = this.#socket;
    if (socket === null || socket.readyState === WebSocket.CLOSED) return;
    const gone = new Promise((resolve) => socket.once('close', resolve));
    socket.terminate();
    await gone;
  }

  #hear(message: ServerMessage): void {
    if (message.kind === 'table') this.#see(message.table);
    if (message.kind === 'delta') this.#see(this.#with(message.table));
    if (message.kind === 'review' && !message.more) this.reviewed = message.round;
    if (message.kind === 'ack' && !this.#unanswered.delete(message.id)) this.#losses.doubled++;
    if (message.kind === 'rejected') throw new Error(`${message.code}: ${message.message}`);
  }

  #with(news: TableDelta): Table {
    const table = this.#table && applyDelta(this.#table, news);
    if (table === null) throw new Error('The server told news of a table that is not here.');
    return table;
  }

  #see(table: Table): void {
    const before = this.#table;
    this.#table = table;
    this.#entered();
    const { view } = table;
    if (view?.audience !== 'seat') return;
    const step = `${table.round}/${stepOf(view.stage)}`;
    if (this.#answered !== null && this.#answered.step !== step) {
      this.#check(view, this.#answered);
      this.#answered = null;
      this.#events.told(true);
    }
    if (view.stage.phase === 'closed') {
      const known = before?.round === table.round && before.view?.stage.phase === 'closed';
      if (!known && table.round < this.#lastRound) this.ready();
    } else if (view.answer === null && this.#answered === null && this.#asked !== step) {
      this.#asked = step;
      this.#events.asked();
    }
  }

  #check({ record }: SeatView, { step, tiles }: Answered): void {
    if (tiles.length === 0) return;
    const moves = record.steps.filter((past) => past.kind === 'move' && step.endsWith(`/${past.step}`));
    const gave = moves.map((move) => (move.kind === 'move' ? [...move.gave].sort().join() : ''));
    if (gave[0] !== [...tiles].sort().join()) this.#losses.lost++;
    if (gave.length > 1) this.#losses.doubled++;
  }

  #newId(): string {
    return `c${++this.#ids}`;
  }

  #command(message: ClientMessage): void {
    this.#unanswered.set(message.id, message);
    this.#send(message);
  }

  #send(message: ClientMessage): void {
    this.#socket?.send(JSON.stringify(message));
  }
}

/** The longest round: always three tiles, always on, and nothing by courtesy. */
function choiceFor(view: SeatView): Choice {
  const decision = pendingDecision(view);
  switch (decision?.kind) {
    case 'pass': {
      const tiles = view.rack.filter((face) => face !== 'joker').slice(0, decision.count);
      return { kind: 'pass', step: decision.step, tiles, blind: 0 };
    }
    case 'vote':
      return { kind: 'vote', step: 'vote', go: true };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: 0 };
    case undefined:
      throw new Error(`Nobody is asked while ${view.stage.phase}.`);
  }
}
