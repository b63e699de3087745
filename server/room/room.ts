// One room: decide, append, evolve, tell; one command after the other, and nothing is answered before it is kept.
import { setImmediate } from 'node:timers/promises';
import { errorFacts, type Log } from '../log.ts';
import type { Clock, Store, Undo } from '../ports.ts';
import { type Answer, Answers } from './answers.ts';
import type { RoomCommand } from './command.ts';
import { decideRoom } from './decide.ts';
import { turnDown } from './decision.ts';
import type { Logged, RoomEvent } from './event.ts';
import { evolveRoom } from './evolve.ts';
import { Mailbox } from './mailbox.ts';
import type { Recent } from './recent.ts';
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

interface Job {
  readonly command: RoomCommand;
  readonly id: string | null;
  answer(answer: Answer): void;
}

/** An event and the room right after it. */
interface Step {
  readonly logged: Logged;
  readonly state: RoomState;
}

/** What a few commands come to if nobody else was quicker. */
interface Plan {
  readonly steps: readonly Step[];
  /** One for each command, good as soon as the steps are kept. */
  readonly answers: readonly Answer[];
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
  #waiting: Job[] = [];
  /** When this server learnt of the open step; null for one that was open when the room came to life here. */
  #stepSeen: number | null = null;

  /** `recent` is what `log` leads to. */
  constructor(code: string, log: readonly Logged[], recent: Recent, ports: RoomPorts) {
    this.code = code;
    this.#ports = ports;
    this.#answers = Answers.fromLog(log);
    this.#recent = recent;
  }

  get state(): RoomState {
    return this.#recent.latest;
  }

  /** When the open step was opened, by the clock of this server: another server's clock may be wrong. */
  get stepSince(): number {
    return this.#stepSeen ?? this.state.play?.stepAt ?? this.state.at;
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
    if (this.#waiting.length >= MOST_WAITING) return turnDown('too-fast');
    return new Promise((answer) => {
      // Those that come within one turn, or while the store is busy, are kept by one write and told by one message.
      if (this.#waiting.push({ command, id, answer }) > 1) return;
      void this.#mailbox.run(async () => {
        await setImmediate();
        await this.#performAll(this.#waiting.splice(0));
      });
    });
  }

  /** Takes over what another server has written up to event `seq`, in its turn. Rejects when the store is away. */
  async catchUp(seq: number): Promise<void> {
    if (seq <= this.state.seq) return;
    await this.#mailbox.run(async () => {
      if (seq > this.state.seq) await this.#catchUp();
    });
  }

  /** Resolves when every command given so far is answered. */
  drained(): Promise<void> {
    return this.#mailbox.drained();
  }

  async #performAll(jobs: readonly Job[]): Promise<void> {
    try {
      const answers = await this.#perform(jobs);
      for (const [index, { answer }] of jobs.entries()) answer(answers[index]!);
    } catch (error) {
      this.#ports.log.error({ command: jobs[0]?.command.kind, ...errorFacts(error) }, 'a command failed');
      await this.#catchUp().catch(() => undefined);
      for (const { id, answer } of jobs) answer(this.#afterFailure(id));
    }
  }

  /** The answers to these commands, in their order. */
  async #perform(jobs: readonly Job[]): Promise<readonly Answer[]> {
    for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
      const { steps, answers } = this.#plan(jobs);
      if (steps.length === 0) return this.#keep(jobs, answers);
      const log = steps.map(({ logged }) => logged);
      const outcome = await this.#ports.store.append(this.code, this.state.seq, log);
      if (outcome === 'kept') this.#happen(steps);
      else await this.#catchUp();
      if (outcome === 'kept') return this.#keep(jobs, answers);
      // A command that the log holds already was accepted once, so it is accepted again.
      if (outcome === 'repeated')
        return jobs.length === 1 ? this.#keep(jobs, [{ ok: true }]) : this.#oneByOne(jobs);
    }
    return jobs.map(({ id }) => this.#known(id) ?? turnDown('try-later'));
  }

  async #oneByOne(jobs: readonly Job[]): Promise<readonly Answer[]> {
    const answers: Answer[] = [];
    for (const job of jobs) answers.push(...(await this.#perform([job])));
    return answers;
  }

  /** Decides each command on the room as those before it leave it. */
  #plan(jobs: readonly Job[]): Plan {
    const steps: Step[] = [];
    const answers: Answer[] = [];
    const fresh = new Map<string, Answer>();
    const at = this.#ports.clock.now();
    let state = this.state;
    for (const { command, id } of jobs) {
      const known = this.#known(id) ?? (id === null ? undefined : fresh.get(id));
      if (known !== undefined) {
        answers.push(known);
        continue;
      }
      const decision = decideRoom(state, command);
      for (const entry of logged(decision.ok ? decision.events : [], { after: state.seq, at, command: id })) {
        state = evolveRoom(state, entry);
        steps.push({ logged: entry, state });
      }
      const answer: Answer = decision.ok ? { ok: true } : decision;
      if (id !== null) fresh.set(id, answer);
      answers.push(answer);
    }
    return { steps, answers };
  }

  /** A write that failed may have been kept all the same, with only the answer lost: the log knows. */
  #afterFailure(id: string | null): Answer {
    return this.#known(id) ?? turnDown('try-later');
  }

  #known(id: string | null): Answer | undefined {
    return id === null ? undefined : this.#answers.get(id);
  }

  #keep(jobs: readonly Job[], answers: readonly Answer[]): readonly Answer[] {
    for (const [index, { id }] of jobs.entries()) if (id !== null) this.#answers.keep(id, answers[index]!);
    return answers;
  }

  /** Somebody else wrote to this room: takes over what happened there. */
  async #catchUp(): Promise<void> {
    const log = await this.#ports.store.load(this.code, this.state.seq);
    if (log === null) throw new Error('The room is no longer kept.');
    for (const { command } of log) if (command !== null) this.#answers.keep(command, { ok: true });
    let state = this.state;
    this.#happen(
      log.map((logged) => {
        state = evolveRoom(state, logged);
        return { logged, state };
      }),
    );
  }

  #happen(steps: readonly Step[]): void {
    const { play } = this.state;
    for (const { state } of steps) this.#recent.keep(state);
    const log = steps.map(({ logged }) => logged);
    const now = this.state.play;
    const opened = now?.stepAt !== play?.stepAt || now?.round.settled.length !== play?.round.settled.length;
    if (opened) this.#stepSeen = this.#ports.clock.now();
    for (const listener of this.#listeners) {
      try {
        listener(this.state, log);
      } catch (error) {
        // The events are kept, so the command is done whatever a listener makes of them.
        this.#ports.log.error(errorFacts(error), 'a listener of the room failed');
      }
    }
  }
}
