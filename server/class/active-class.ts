// An active class of this process: its aggregate, its tables, and the requests that wait for a change.
import type { ClassAction, Seat } from '../../shared-engine/index.ts';
import { type Answer, reject } from '../aggregate/decision.ts';
import { SerialQueue } from '../aggregate/serial-queue.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Cancel, Clock, PlayingCard, Store, Unsubscribe } from '../ports.ts';
import type { Registry } from '../registry/registry.ts';
import type { RoomChange } from '../room/room.ts';
import { type AnalysesPorts, ClassAnalyses } from './analyses.ts';
import type { ClassAggregate, ClassChange } from './class.ts';
import type { ClassCommand } from './decide.ts';
import { seatAsPlaced } from './placing.ts';
import { arePlacesOpen } from './seating.ts';
import { type ClassPlayer, type ClassState, playersIn, playersWithPlace } from './state.ts';
import { reconcileTable, wantsDeal } from './table-reconciliation.ts';
import { Tables } from './tables.ts';

/** Pause before tables that could not be updated are tried again, in milliseconds. */
const RETRY_MS = 1000;

export interface ClassPorts extends AnalysesPorts {
  readonly registry: Registry;
  readonly store: Pick<Store, 'history' | 'remove' | 'rewrite'>;
  readonly clock: Clock;
  readonly log: Log;
  /** Under which phones reach this server; null where nobody has said. */
  readonly publicAddress: string | null;
}

export class ActiveClass {
  readonly code: string;
  readonly card: PlayingCard;
  readonly tables: Tables;
  readonly analyses: ClassAnalyses;
  /** Players join one at a time, so that no two are given one seat. */
  readonly joins = new SerialQueue();
  /** Steps are frozen one at a time, so that the figures of none are computed twice. */
  readonly freezes = new SerialQueue();
  readonly #aggregate: ClassAggregate;
  readonly #ports: ClassPorts;
  readonly #unsubscribe: Unsubscribe;
  readonly #waiting = new Set<() => void>();
  /** Players whose seats are free before the class knows that they have gone: nobody seats them again. */
  readonly #going = new Set<number>();
  #version = 0;
  #cancelRetry: Cancel = () => {};
  #stopped = false;

  /** Follows the class and its tables until `stop`. */
  constructor(aggregate: ClassAggregate, card: PlayingCard, ports: ClassPorts) {
    this.code = aggregate.code;
    this.card = card;
    this.#aggregate = aggregate;
    this.#ports = ports;
    this.tables = new Tables({ ...ports, onChange: (room, recorded) => this.#tableChanged(room, recorded) });
    this.analyses = new ClassAnalyses(this, ports);
    this.#unsubscribe = aggregate.onChange((change) => this.#classChanged(change));
  }

  get state(): ClassState {
    return this.#aggregate.state;
  }

  /** Whether nothing changes here any more: the server closes, or the class was unloaded or deleted. */
  get stopped(): boolean {
    return this.#stopped;
  }

  /** Under which phones reach this server; null where nobody has said. */
  get publicAddress(): string | null {
    return this.#ports.publicAddress;
  }

  /** Changes whenever the class or one of its tables does. */
  get version(): number {
    return this.#version;
  }

  /** When the class was last asked for, by the clock of this server. */
  usedAt = 0;

  /** Resolves at the next change, or after `ms` milliseconds. */
  async waitForChange(ms: number): Promise<void> {
    if (this.#stopped) return;
    await new Promise<void>((resolve) => {
      const go = () => {
        cancel();
        this.#waiting.delete(go);
        resolve();
      };
      const cancel = this.#ports.clock.after(ms, go);
      this.#waiting.add(go);
    });
  }

  /** Answers the waiting requests: there is an event, or something else new to show. */
  notifyChange(): void {
    this.#version++;
    for (const go of [...this.#waiting]) go();
  }

  /** Runs a command in its turn and then updates the tables. Never rejects. */
  async submit(command: ClassCommand): Promise<Answer> {
    const answer = await this.#aggregate.submit(command);
    if (answer.ok) await this.reconcile(command.kind === 'deal-next');
    return answer;
  }

  /** Stores what the class has found out itself, which changes nothing at its tables. Never rejects. */
  record(command: ClassCommand): Promise<Answer> {
    return this.#aggregate.submit(command);
  }

  /** More seconds for the open step, at one player's table or at all; a table that got some since gets no more. */
  async giveTime({ player, seconds, given }: ClassAction & { kind: 'more-time' }): Promise<Answer> {
    const players = playersWithPlace(this.state).filter(({ id }) => player === null || id === player);
    if (players.length === 0) return reject('no-such-player');
    // One of those who share a table stands for it.
    const byRoom = new Map(players.map(({ room, id }) => [room, given?.[id]]));
    const answers = await Promise.all(
      [...byRoom].map(async ([code, before]): Promise<Answer> => {
        const table = await this.tables.find(code);
        return table ? table.live.room.submit({ kind: 'more-time', seconds, before }) : { ok: true };
      }),
    );
    return answers.find(({ ok }) => !ok) ?? { ok: true };
  }

  /** Takes a player out of the class; asked again it does what could not be done before. */
  async remove(player: number): Promise<Answer> {
    const one = this.state.players[player];
    if (!one) return reject('no-such-player');
    const vacated = await this.vacateSeat(one);
    return vacated.ok ? this.submit({ kind: 'remove', player }) : vacated;
  }

  /** Frees the seat of a player who has given it up or is removed; where it was freed before, somebody else may have it. */
  async vacateSeat({ id, room, seat, left }: ClassPlayer): Promise<Answer> {
    if (left) return { ok: true };
    this.#going.add(id);
    const table = await this.tables.find(room);
    return table ? table.live.room.submit({ kind: 'vacate-seat', seat }) : { ok: true };
  }

  /** Deletes every table and the class, which must not be used any more. */
  async delete(): Promise<void> {
    for (const code of this.rooms()) {
      const table = await this.tables.find(code);
      await table?.live.room.submit({ kind: 'close' });
      await this.#ports.store.remove(code);
    }
    this.stop();
    await this.#ports.store.remove(this.code);
  }

  /** Takes over what another server has written up to event `version`. Rejects when the store cannot be reached. */
  async catchUp(version: number): Promise<void> {
    await this.#aggregate.catchUp(version);
    await this.reconcile();
  }

  /**
   * Makes every table as the class wants it; what cannot be done now is tried again. `called`: the teacher has just
   * called the next deal. A table that was not done by then gets it when its players have read their reviews.
   */
  async reconcile(called = false): Promise<void> {
    this.#cancelRetry();
    const done = await Promise.all(this.#toReconcile().map((code) => this.#makeTable(code, called)));
    if (this.#stopped || done.every((ok) => ok)) return;
    this.#cancelRetry = this.#ports.clock.after(RETRY_MS, () => void this.reconcile(called));
  }

  /** Before the first deal also those that somebody was moved away from. */
  #toReconcile(): readonly string[] {
    return arePlacesOpen(this.state) ? this.state.tables : this.rooms();
  }

  /** Codes of the tables at which one of these players sits. */
  rooms(wanted: (player: number) => boolean = () => true): string[] {
    return [
      ...new Set(
        playersWithPlace(this.state)
          .filter(({ id }) => wanted(id))
          .map(({ room }) => room),
      ),
    ];
  }

  stop(): void {
    this.#stopped = true;
    this.#cancelRetry();
    this.#unsubscribe();
    this.analyses.stop();
    this.tables.close();
    for (const go of [...this.#waiting]) go();
  }

  #classChanged({ recorded }: ClassChange): void {
    for (const { seq, event } of recorded) this.#ports.log.info({ seq, event: event.kind }, 'class event');
    this.notifyChange();
    if (recorded.some(({ event }) => event.kind === 'frozen')) this.analyses.ask();
    if (recorded.some(({ event }) => event.kind === 'shown')) this.analyses.revealed();
  }

  #tableChanged(code: string, recorded: RoomChange['recorded']): void {
    this.notifyChange();
    this.analyses.ask(code);
    for (const { event } of recorded) if (event.kind === 'connected') this.#giveBack(code, event.seat);
    const state = this.tables.at(code)?.live.room.state;
    if (state && wantsDeal(state)) void this.#reconcileTable(code, false);
  }

  /** Somebody for whom the teacher let a bot play is back, and has the seat at once. */
  #giveBack(room: string, seat: Seat): void {
    const player = playersIn(this.state).find((one) => one.room === room && one.seat === seat);
    if (player?.standIn) void this.submit({ kind: 'stand-in', player: player.id, on: false });
  }

  /** Its people first, who are only where the class has put them once it has heard of everything. */
  async #makeTable(code: string, called: boolean): Promise<boolean> {
    const { store, log } = this.#ports;
    try {
      const table = await this.tables.find(code);
      const isGoing = ({ id }: ClassPlayer) => this.#going.has(id);
      if (table && !(await seatAsPlaced(table, { state: this.state, isGoing, store }))) return false;
    } catch (error) {
      log.warn(errorFacts(error), 'the people of a table could not be seated');
      return false;
    }
    return this.#reconcileTable(code, called);
  }

  #reconcileTable(code: string, called: boolean): Promise<boolean> {
    const { tables } = this;
    const { log } = this.#ports;
    return reconcileTable({ state: () => this.state, tables, log }, code, called);
  }
}
