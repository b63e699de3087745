// One room: decide, append, evolve, tell; one command at a time, and nothing is answered before it is kept.
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Store, Undo } from '../ports.ts';
import { type Answer, Answers } from './answers.ts';
import type { RoomCommand } from './command.ts';
import { decideRoom } from './decide.ts';
import { turnDown } from './decision.ts';
import type { Logged, RoomEvent } from './event.ts';
import { evolveRoom } from './evolve.ts';
import { Mailbox } from './mailbox.ts';
import { Recent } from './recent.ts';
import type { RoomState } from './state.ts';

/** Commands that may wait in one room before more are turned down. */
const MOST_WAITING = 200;
/** How often a command is decided anew because another server was quicker. */
const ATTEMPTS = 5;

export interface RoomPorts {
  readonly store: Store;
  readonly clock: Clock;
  readonly log: Log;
}

export type ChangeListener = (state: RoomState, happened: readonly Logged[]) => void;

/** Gives the events their numbers, from `after` + 1; the first one carries the command. */
export function logged(
  events: readonly RoomEvent[],
  { after, at, command }: { after: number; at: number; command: string | null },
): Logged[] {
  return events.map((event, index) => ({
    seq: after + 1 + index,
    at,
    command: index === 0 ? command : null,
    event,
  }));
}

export class Room {
  readonly code: string;
  readonly #ports: RoomPorts;
  readonly #mailbox = new Mailbox();
  readonly #listeners = new Set<ChangeListener>();
  readonly #answers: Answers;
  readonly #recent: Recent;
  #state: RoomState;
  /** When this server learnt of the open step; null for one that was open when the room came to life here. */
  #stepSeen: number | null = null;

  constructor(code: string, log: readonly Logged[], state: RoomState, ports: RoomPorts) {
    this.code = code;
    this.#ports = ports;
    this.#state = state;
    this.#answers = Answers.fromLog(log);
    this.#recent = Recent.fromLog(log);
  }

  get state(): RoomState {
    return this.#state;
  }

  /** When the open step was opened, by the clock of this server: another server's clock may be wrong. */
  get stepSince(): number {
    return this.#stepSeen ?? this.#state.play?.stepAt ?? this.#state.at;
  }

  /** The room right after event `seq`; undefined when that is too long ago. */
  stateAt(seq: number): RoomState | undefined {
    return this.#recent.at(seq);
  }

  /** Called after every change, in the order of subscription, when the events are already kept. */
  onChange(listener: ChangeListener): Undo {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /**
   * Runs a command when its turn comes. `id` names it for good: a repeated one is not run again and gets the
   * answer of the first. Never rejects: a store that fails is a refusal, and nothing was changed.
   */
  async submit(command: RoomCommand, id: string | null = null): Promise<Answer> {
    if (this.#mailbox.waiting >= MOST_WAITING) return turnDown('too-fast');
    return this.#mailbox.run(async () => {
      try {
        return await this.#perform(command, id);
      } catch (error) {
        this.#ports.log.error({ command: command.kind, ...errorFacts(error) }, 'a command failed');
        return this.#afterFailure(id);
      }
    });
  }

  /** Takes over what another server has written up to event `seq`, in its turn. Rejects when the store is away. */
  async catchUp(seq: number): Promise<void> {
    if (seq <= this.#state.seq) return;
    await this.#mailbox.run(async () => {
      if (seq > this.#state.seq) await this.#catchUp();
    });
  }

  /** Resolves when every command given so far is answered. */
  drained(): Promise<void> {
    return this.#mailbox.drained();
  }

  async #perform(command: RoomCommand, id: string | null): Promise<Answer> {
    for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
      const known = id === null ? undefined : this.#answers.get(id);
      if (known) return known;
      const decision = decideRoom(this.#state, command);
      if (!decision.ok) return this.#answered(id, decision);
      if (decision.events.length === 0) return this.#answered(id, { ok: true });
      const after = this.#state.seq;
      const log = logged(decision.events, { after, at: this.#ports.clock.now(), command: id });
      const outcome = await this.#ports.store.append(this.code, after, log);
      if (outcome === 'kept') this.#happen(log);
      else await this.#catchUp();
      // A command that the log holds already was accepted once, so it is accepted again.
      if (outcome !== 'conflict') return this.#answered(id, { ok: true });
    }
    return turnDown('try-later');
  }

  /** A write that failed may have been kept all the same, with only the answer lost: the log knows. */
  async #afterFailure(id: string | null): Promise<Answer> {
    try {
      await this.#catchUp();
      return (id === null ? undefined : this.#answers.get(id)) ?? turnDown('try-later');
    } catch {
      return turnDown('try-later');
    }
  }

  #answered(id: string | null, answer: Answer): Answer {
    if (id !== null) this.#answers.keep(id, answer);
    return answer;
  }

  /** Somebody else wrote to this room: takes over what happened there. */
  async #catchUp(): Promise<void> {
    const log = await this.#ports.store.load(this.code, this.#state.seq);
    if (log === null) throw new Error('The room is no longer kept.');
    for (const { command } of log) if (command !== null) this.#answers.keep(command, { ok: true });
    this.#happen(log);
  }

  #happen(log: readonly Logged[]): void {
    const { play } = this.#state;
    for (const logged of log) {
      this.#state = evolveRoom(this.#state, logged);
      this.#recent.keep(this.#state);
    }
    const now = this.#state.play;
    const opened = now?.stepAt !== play?.stepAt || now?.round.settled.length !== play?.round.settled.length;
    if (opened) this.#stepSeen = this.#ports.clock.now();
    for (const listener of this.#listeners) {
      try {
        listener(this.#state, log);
      } catch (error) {
        // The events are kept, so the command is done whatever a listener makes of them.
        this.#ports.log.error(errorFacts(error), 'a listener of the room failed');
      }
    }
  }
}
