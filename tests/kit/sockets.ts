// One end of a room's socket in a test: keeps every frame, waits for messages, sends commands and gets answers.
import { WebSocket } from 'ws';
import {
  type ClientMessage,
  type ServerMessage,
  serverMessageSchema,
  type TableAction,
} from '../../shared-engine/protocol/messages.ts';
import { SOCKET_PATH, socketPath } from '../../shared-engine/protocol/paths.ts';
import { applyDelta, type Table } from '../../shared-engine/protocol/table.ts';
import type { Choice } from '../../shared-engine/rules/exchange/command.ts';

type Of<K extends ServerMessage['kind']> = Extract<ServerMessage, { kind: K }>;
export type Answer = Of<'ack'> | Of<'rejected'>;

/** Long enough for any machine: a message that is not there by then will not come. */
const TIMEOUT_MS = 20_000;

/** Ids of one person must differ over all of its sockets, so all peers count together. */
let ids = 0;

export class Peer {
  /** As they came, for tests that look for what must not be in them. */
  readonly frames: string[] = [];
  readonly sent: string[] = [];
  /** With the whole table after each delta. */
  readonly messages: ServerMessage[] = [];
  /** The code with which the socket ended. */
  readonly ended: Promise<number>;
  readonly socket: WebSocket;
  #last: Of<'table'> | null = null;
  #waiting: (() => void)[] = [];

  constructor(url: string, headers: Readonly<Record<string, string>> = {}, path = SOCKET_PATH) {
    this.socket = new WebSocket(`${url.replace('http', 'ws')}${path}`, { headers });
    this.socket.on('message', (data) => {
      const frame = data.toString();
      this.frames.push(frame);
      this.#hear(serverMessageSchema.parse(JSON.parse(frame)));
      for (const wake of this.#waiting.splice(0)) wake();
    });
    this.ended = new Promise((resolve) => this.socket.on('close', resolve));
    this.socket.on('error', () => {});
  }

  /** Connects and waits until the server has accepted the socket. */
  static async open(
    url: string,
    headers: Readonly<Record<string, string>> = {},
    path = SOCKET_PATH,
  ): Promise<Peer> {
    const peer = new Peer(url, headers, path);
    await new Promise((resolve, reject) => {
      peer.socket.once('open', resolve);
      peer.socket.once('error', reject);
    });
    return peer;
  }

  /** Connects, with the code of the room as a page does where it is given, shows the ticket and waits for the first table. */
  static async enter(url: string, ticket: string, code?: string): Promise<Peer> {
    const peer = await Peer.open(url, {}, code === undefined ? SOCKET_PATH : socketPath(code));
    peer.send({ kind: 'hello', id: 'hello', versions: [1, 1], ticket });
    await peer.untilTable(() => true);
    return peer;
  }

  send(message: ClientMessage): void {
    this.sendRaw(JSON.stringify(message));
  }

  sendRaw(data: string | Uint8Array, binary = false): void {
    if (typeof data === 'string') this.sent.push(data);
    this.socket.send(data, { binary });
  }

  /** The first message, come or to come, from which `pick` takes something. */
  async until<T>(what: string, pick: (message: ServerMessage) => T | null | undefined | false): Promise<T> {
    for (let next = 0; ; ) {
      while (next < this.messages.length) {
        const found = pick(this.messages[next++]!);
        if (found !== null && found !== undefined && found !== false) return found;
      }
      await this.#nextMessage(what);
    }
  }

  /** The latest table, as soon as it satisfies `holds`. */
  async untilTable(holds: (table: Table) => boolean, what = 'a table'): Promise<Table> {
    for (;;) {
      const table = this.latest();
      if (table && holds(table)) return table;
      await this.#nextMessage(what);
    }
  }

  get table(): Table {
    const table = this.latest();
    if (!table) throw new Error('no table has come yet');
    return table;
  }

  review(): Promise<Of<'review'>> {
    return this.until('a review', (message) => message.kind === 'review' && message);
  }

  choose(choice: Choice, more: { id?: string; round?: number; seat?: 0 | 1 | 2 | 3 } = {}): Promise<Answer> {
    const { id = this.newId(), round = this.table.round, seat = this.table.you ?? 0 } = more;
    this.send({ kind: 'choose', id, round, seat, choice });
    return this.answerTo(id);
  }

  act(action: TableAction, id = this.newId()): Promise<Answer> {
    this.send({ kind: 'action', id, action });
    return this.answerTo(id);
  }

  /** Waits for an answer that comes after this call. */
  answerTo(id: string | null): Promise<Answer> {
    const from = this.messages.length;
    return this.until(`an answer to ${id}`, (message) => {
      if (message.kind !== 'ack' && message.kind !== 'rejected') return null;
      return message.id === id && this.messages.indexOf(message) >= from && message;
    });
  }

  newId(): string {
    return `c${++ids}`;
  }

  /** Both ends have read what the other had sent before. */
  async roundTrip(): Promise<void> {
    for (let turn = 0; turn < 2; turn++) {
      if (this.socket.readyState !== WebSocket.OPEN) return;
      const pong = new Promise((resolve) => this.socket.once('pong', resolve));
      this.socket.ping();
      await Promise.race([pong, this.ended]);
    }
  }

  async close(): Promise<void> {
    this.socket.close();
    await this.ended;
  }

  latest(): Table | undefined {
    return this.#last?.table;
  }

  #hear(message: ServerMessage): void {
    this.messages.push(message);
    if (message.kind === 'table') this.#last = message;
    if (message.kind !== 'delta' || this.#last === null) return;
    const { seq, after } = message;
    const table = after === this.#last.seq ? applyDelta(this.#last.table, message.table) : null;
    if (table === null) throw new Error('a delta that does not fit the table sent before');
    this.#last = { kind: 'table', seq, table };
    this.messages.push(this.#last);
  }

  #nextMessage(what: string): Promise<void> {
    return new Promise((resolve, reject) => {
      const late = setTimeout(() => reject(new Error(`no sign of ${what}`)), TIMEOUT_MS);
      const settle = (go: () => void) => () => {
        clearTimeout(late);
        go();
      };
      this.#waiting.push(settle(resolve));
      void this.ended.then((code) => settle(() => reject(new Error(`closed with ${code}, no ${what}`)))());
    });
  }
}
