// A class at work: decide, append, evolve, and bring every table in line with what the class has decided.
import { SEATS, type Seat } from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Clock, PlayingCard, Store, Undo } from '../ports.ts';
import type { Answer } from '../room/answers.ts';
import { turnDown } from '../room/decision.ts';
import type { Logged } from '../room/event.ts';
import type { Lead } from '../room/lead.ts';
import { Mailbox } from '../room/mailbox.ts';
import type { Registry } from '../room/registry.ts';
import { logged } from '../room/room.ts';
import { personsOf, type RoomState, roundRuns } from '../room/state.ts';
import { type ClassCommand, decideClass } from './decide.ts';
import { evolveLogged } from './evolve.ts';
import { type ClassState, type Pupil, playsOneLine } from './state.ts';
import { type ClassTable, Tables } from './tables.ts';
import { botsOf } from './turned.ts';

/** How often a command is decided anew because another server was quicker. */
const ATTEMPTS = 5;
/** Pause before tables that could not be told are told again, in milliseconds. */
const RETRY_MS = 1000;

export interface ClassPorts {
  readonly registry: Registry;
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Log;
}

export class LiveClass {
  readonly code: string;
  readonly card: PlayingCard;
  readonly tables: Tables;
  /** Pupils come in one at a time, so that no two are given one seat. */
  readonly door = new Mailbox();
  readonly #ports: ClassPorts;
  readonly #mailbox = new Mailbox();
  readonly #waiting = new Set<() => void>();
  #state: ClassState;
  #version: number;
  #callOff: Undo = () => {};
  #stopped = false;

  constructor(code: string, state: ClassState, card: PlayingCard, ports: ClassPorts) {
    this.code = code;
    this.card = card;
    this.#state = state;
    this.#ports = ports;
    // Another server, or this one before a restart, has counted otherwise.
    this.#version = ports.clock.now();
    this.tables = new Tables({ ...ports, onChange: (room) => this.#tableChanged(room) });
  }

  get state(): ClassState {
    return this.#state;
  }

  /** Changes whenever the class or one of its tables does. */
  get version(): number {
    return this.#version;
  }

  /** When the class was last asked for, by the clock of this server. */
  usedAt = 0;

  /** Resolves at the next change, or after `ms` milliseconds. */
  async untilChange(ms: number): Promise<void> {
    if (this.#stopped) return;
    await new Promise<void>((resolve) => {
      const go = () => {
        callOff();
        this.#waiting.delete(go);
        resolve();
      };
      const callOff = this.#ports.clock.after(ms, go);
      this.#waiting.add(go);
    });
  }

  /** There is something new to show that is no event. */
  tell(): void {
    this.#changed();
  }

  /** Runs a command in its turn and then tells the tables. Never rejects. */
  async submit(command: ClassCommand): Promise<Answer> {
    const answer = await this.#mailbox.run(async () => {
      try {
        return await this.#perform(command);
      } catch (error) {
        this.#ports.log.error({ command: command.kind, ...errorFacts(error) }, 'a command to a class failed');
        return turnDown('try-later');
      }
    });
    if (answer.ok) await this.align(command.kind === 'deal-next');
    return answer;
  }

  /** More seconds for the open step, at one pupil's table or at all. */
  async giveTime(pupil: number | null, seconds: number): Promise<Answer> {
    const rooms = this.rooms((one) => pupil === null || one === pupil);
    if (rooms.length === 0) return turnDown('no-such-pupil');
    const answers = await Promise.all(
      rooms.map(async (code): Promise<Answer> => {
        const table = await this.tables.meet(code);
        return table ? table.live.room.submit({ kind: 'more-time', seconds }) : { ok: true };
      }),
    );
    return answers.find(({ ok }) => !ok) ?? { ok: true };
  }

  /** A pupil has given the seat up. */
  async freeSeat({ room, seat }: Pupil): Promise<Answer> {
    const table = await this.tables.meet(room);
    return table ? table.live.room.submit({ kind: 'free-pupil', seat }) : { ok: true };
  }

  /** Every table ends for good; the class is not to be used any more. */
  async disband(): Promise<void> {
    for (const code of this.rooms()) {
      const table = await this.tables.meet(code);
      await table?.live.room.submit({ kind: 'close' });
      await this.#ports.store.remove(code);
    }
    this.stop();
    await this.#ports.store.remove(this.code);
  }

  /** Takes over what another server has written. Rejects when the store is away. */
  async catchUp(): Promise<void> {
    await this.#mailbox.run(() => this.#catchUp());
    await this.align();
  }

  /**
   * Brings every table in line; what cannot be done now is tried again. `called`: the teacher has just called the next
   * deal. A table that was not done by then gets it when its pupils have read their reviews and say so.
   */
  async align(called = false): Promise<void> {
    this.#callOff();
    const done = await Promise.all(this.rooms().map((code) => this.#alignTable(code, called)));
    if (this.#stopped || done.every((ok) => ok)) return;
    this.#callOff = this.#ports.clock.after(RETRY_MS, () => void this.align(called));
  }

  /** Codes of the tables at which one of these pupils sits. */
  rooms(wanted: (pupil: number) => boolean = () => true): string[] {
    return [...new Set(this.#state.pupils.filter(({ id }) => wanted(id)).map(({ room }) => room))];
  }

  stop(): void {
    this.#stopped = true;
    this.#callOff();
    this.tables.leave();
    for (const go of [...this.#waiting]) go();
  }

  async #perform(command: ClassCommand): Promise<Answer> {
    for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
      const decision = decideClass(this.#state, command);
      if (!decision.ok) return decision;
      if (decision.events.length === 0) return { ok: true };
      const after = this.#state.seq;
      const events = decision.events.map((event) => ({ kind: 'class', event }) as const);
      const log = logged(events, { after, at: this.#ports.clock.now(), command: null });
      if ((await this.#ports.store.append(this.code, after, log)) === 'kept') {
        this.#happen(log);
        return { ok: true };
      }
      await this.#catchUp();
    }
    return turnDown('try-later');
  }

  async #catchUp(): Promise<void> {
    const log = await this.#ports.store.load(this.code, this.#state.seq);
    if (log === null) throw new Error('The class is no longer kept.');
    if (log.length > 0) this.#happen(log);
  }

  #happen(log: readonly Logged[]): void {
    for (const { seq, event } of log) {
      const kind = event.kind === 'class' ? event.event.kind : event.kind;
      this.#ports.log.info({ seq, event: kind }, 'class event');
    }
    this.#state = log.reduce(evolveLogged, this.#state);
    this.#changed();
  }

  #tableChanged(code: string): void {
    this.#changed();
    const state = this.tables.at(code)?.live.room.state;
    if (state && isReady(state)) void this.#alignTable(code, false);
  }

  #changed(): void {
    this.#version++;
    for (const go of [...this.#waiting]) go();
  }

  /** Whether this table is as the class wants it. */
  async #alignTable(code: string, called: boolean): Promise<boolean> {
    try {
      const table = await this.tables.meet(code);
      if (table === null) return true;
      const { room } = table.live;
      const { ended, holdBefore, terms } = this.#state;
      const oneLine = !ended && playsOneLine(this.#state);
      const lead: Lead = {
        holdBefore: ended ? null : holdBefore,
        standIn: this.#standIns(code),
        ...(oneLine && { oneLine }),
        ...(terms.cardClosed && { cardClosed: true }),
      };
      const led = await room.submit({ kind: 'lead', lead });
      if (!led.ok) return false;
      const behind = oneLine ? await this.#follow(table) : led;
      // In one line all wait for each table, so none may wait for a pupil who is away to ask for the deal.
      const asked = called || oneLine || isReady(room.state);
      const dealt = asked ? await this.#deal(table) : led;
      const followed = oneLine ? await this.#follow(table) : led;
      return behind.ok && dealt.ok && followed.ok;
    } catch (error) {
      this.#ports.log.warn(errorFacts(error), 'a table of a class could not be told');
      return false;
    }
  }

  /** The next deal that this table has not had, once the one before is closed. */
  async #deal({ live: { room } }: ClassTable): Promise<Answer> {
    const { pupils, deals, dealt, drill, ended } = this.#state;
    const first = pupils.find((pupil) => pupil.room === room.code)?.first;
    if (first === undefined || ended || roundRuns(room.state)) return { ok: true };
    const next = first + (room.state.play?.number ?? 0);
    const deal = deals[next];
    if (deal === undefined || next >= dealt) return { ok: true };
    return room.submit({ kind: 'deal-prepared', deal, bots: botsOf(drill) }, `class/deal ${next}`);
  }

  /** On with the line of the deal before it, to its close where the class has closed it. */
  async #follow({ live: { room } }: ClassTable): Promise<Answer> {
    const { pupils, dealt, line, lineClosed, linesBefore } = this.#state;
    const pupil = pupils.find(({ room: code }) => code === room.code);
    const { play } = room.state;
    if (!pupil || !play) return { ok: true };
    const deal = pupil.first + play.number - 1;
    const before = linesBefore[deal];
    const ahead = before ?? (deal === dealt - 1 ? line : []);
    if ((play.round.own?.length ?? 0) >= ahead.length) return { ok: true };
    const closed = before !== undefined || lineClosed;
    return room.submit({ kind: 'follow', round: play.number, line: ahead, closed });
  }

  #standIns(code: string): Seat[] {
    const stood = this.#state.pupils.filter(({ room, standIn }) => room === code && standIn);
    return SEATS.filter((seat) => stood.some((pupil) => pupil.seat === seat));
  }
}

/** A table that has had no deal, or whose pupils have all asked for the next one. */
function isReady(state: RoomState): boolean {
  if (state.play === null) return true;
  return !roundRuns(state) && personsOf(state).every(({ ready }) => ready);
}
