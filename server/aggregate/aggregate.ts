// One room or class at work: decide, commit, evolve, tell; nothing is answered before it is stored.
import { errorFacts, type Log } from '../log.ts';
import type { Append, AppendOutcome, Clock, Store, Unsubscribe } from '../ports.ts';
import type { Committer, Member } from './committer.ts';
import { type Answer, isFinal, reject } from './decision.ts';
import { IdempotencyCache } from './idempotency-cache.ts';
import { type Job, type Plan, planJobs } from './plan.ts';
import { type Recorded, recordedIn } from './recorded.ts';
import { evolveAll, type Replayed } from './replay.ts';
import type { AggregateType, Versioned } from './type.ts';

/** Commands that may wait at one aggregate before more are rejected. */
const MAX_WAITING = 200;
/** How often a command is decided anew because another server was quicker. */
const MAX_ATTEMPTS = 5;

export interface AggregatePorts {
  readonly store: Pick<Store, 'loadAfter'>;
  readonly committer: Pick<Committer, 'enqueue'>;
  readonly clock: Clock;
  readonly log: Log;
}

export interface Change<State, Event> {
  readonly before: State;
  readonly state: State;
  /** After each row of the log; the last one is the present state. */
  readonly states: readonly State[];
  /** The events of all these rows. */
  readonly recorded: readonly Recorded<Event>[];
}

export type ChangeListener<State, Event> = (change: Change<State, Event>) => void;

export class Aggregate<State extends Versioned, Event, Command> {
  readonly code: string;
  readonly #type: AggregateType<State, Event, Command>;
  readonly #ports: AggregatePorts;
  readonly #cache: IdempotencyCache;
  readonly #listeners = new Set<ChangeListener<State, Event>>();
  readonly #member: Member;
  #state: State;
  /** Number of the event at which loading would begin now, as far as this server knows. */
  #loadsFrom: number;
  #waiting: Job<Command>[] = [];
  /** Being stored. */
  #plan: Plan<State, Event, Command> | null = null;
  /** Whether commands are planned or stored, or a catch-up is under way: one thing at a time. */
  #busy = false;
  /** What is to be done before more commands are planned. */
  #urgent: (() => Promise<void>)[] = [];
  #onIdle: (() => void)[] = [];

  constructor(
    type: AggregateType<State, Event, Command>,
    code: string,
    { states, commands }: Replayed<State>,
    ports: AggregatePorts,
  ) {
    this.code = code;
    this.#type = type;
    this.#ports = ports;
    this.#cache = new IdempotencyCache(commands);
    this.#state = states.at(-1) ?? states[0];
    this.#loadsFrom = states[0].seq;
    this.#member = {
      plan: () => this.#planWaiting(),
      committed: (outcome) => this.#committed(outcome),
      failed: (error) => this.#failed(error),
    };
  }

  get state(): State {
    return this.#state;
  }

  /** Called after every change, in the order of subscription, when the events are stored already. */
  onChange(listener: ChangeListener<State, Event>): Unsubscribe {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  /**
   * Runs a command when its turn comes. `id` names it for good: a repeated one is not run again and gets the answer
   * of the first. Never rejects: a store that fails is a rejection in the answer, and nothing was changed.
   */
  submit(command: Command, id: string | null = null): Promise<Answer> {
    if (this.#waiting.length >= MAX_WAITING) return Promise.resolve(reject('too-fast'));
    return new Promise((answer) => {
      this.#waiting.push({ command, id, attempts: 0, answer });
      this.#next();
    });
  }

  /** Takes over what another server has written up to event `version`. Rejects when the store cannot be reached. */
  catchUp(version: number): Promise<void> {
    if (version <= this.#state.seq) return Promise.resolve();
    return new Promise((resolve, reject) => {
      this.#urgent.push(async () => {
        if (version > this.#state.seq) await this.#catchUp().then(resolve, reject);
        else resolve();
      });
      this.#next();
    });
  }

  /** Resolves when every command given so far is answered. */
  drained(): Promise<void> {
    if (!this.#busy) return Promise.resolve();
    return new Promise((resolve) => this.#onIdle.push(resolve));
  }

  #next(): void {
    if (this.#busy) return;
    const urgent = this.#urgent.shift();
    this.#busy = urgent !== undefined || this.#waiting.length > 0;
    if (urgent) void urgent().then(() => this.#finish());
    else if (this.#busy) this.#ports.committer.enqueue(this.#member);
    else for (const idle of this.#onIdle.splice(0)) idle();
  }

  #finish(): void {
    this.#busy = false;
    this.#next();
  }

  #planWaiting(): Append | null {
    const jobs = this.#waiting.splice(0);
    const at = this.#ports.clock.now();
    try {
      const plan = planJobs(this.#type, {
        state: this.#state,
        cache: this.#cache,
        loadsFrom: this.#loadsFrom,
        jobs,
        at,
      });
      if (plan.append !== null) {
        this.#plan = plan;
        return { code: this.code, ...plan.append };
      }
      this.#answer(jobs, plan.answers);
    } catch (error) {
      this.#giveUp(jobs, error);
    }
    this.#finish();
    return null;
  }

  #committed(outcome: AppendOutcome): void {
    const plan = this.#takePlan();
    if (plan === null) return;
    if (outcome === 'conflict') return void this.#again(plan.jobs).then(() => this.#finish());
    if (outcome === 'invalid') this.#giveUp(plan.jobs, new Error('The events cannot be stored.'));
    else {
      const { state, recorded, append } = plan;
      this.#loadsFrom = append?.snapshot?.version ?? this.#loadsFrom;
      this.#apply({ before: this.#state, state, states: [state], recorded });
      this.#answer(plan.jobs, plan.answers);
    }
    this.#finish();
  }

  /** What was to be stored may be stored all the same, with only the answer lost: the log knows. */
  #failed(error: unknown): void {
    const jobs = this.#takePlan()?.jobs ?? [];
    void this.#catchUp()
      .catch(() => undefined)
      .then(() => {
        this.#giveUp(jobs, error);
        this.#finish();
      });
  }

  #takePlan(): Plan<State, Event, Command> | null {
    const plan = this.#plan;
    this.#plan = null;
    return plan;
  }

  /** Another server was quicker: the commands are decided anew on what it has written, before any that came later. */
  async #again(jobs: readonly Job<Command>[]): Promise<void> {
    try {
      await this.#catchUp();
    } catch (error) {
      return this.#giveUp(jobs, error);
    }
    const tried = jobs.map((job) => ({ ...job, attempts: job.attempts + 1 }));
    this.#waiting.unshift(...tried.filter(({ attempts }) => attempts < MAX_ATTEMPTS));
    const late = tried.filter(({ attempts }) => attempts >= MAX_ATTEMPTS);
    if (late.length > 0) this.#giveUp(late, new Error('Other servers were quicker each time.'));
  }

  /** They are to be given again later, but for those that are stored after all. */
  #giveUp(jobs: readonly Job<Command>[], error: unknown): void {
    this.#ports.log.error({ commands: jobs.length, ...errorFacts(error) }, 'commands failed');
    for (const { id, answer } of jobs) answer(this.#known(id) ?? reject('try-later'));
  }

  #answer(jobs: readonly Job<Command>[], answers: readonly Answer[]): void {
    for (const [index, { id, answer }] of jobs.entries()) {
      const given = answers[index] ?? reject('try-later');
      if (id !== null && isFinal(given)) this.#cache.remember(id, given);
      answer(given);
    }
  }

  #known(id: string | null): Answer | undefined {
    return id === null ? undefined : this.#cache.get(id);
  }

  async #catchUp(): Promise<void> {
    const rows = await this.#ports.store.loadAfter(this.code, this.#state.seq);
    if (rows === null) throw new Error('The log is no longer stored.');
    const { codec } = this.#type;
    const before = this.#state;
    const recorded = rows.flatMap((row) => recordedIn(row, codec)).filter(({ seq }) => seq > before.seq);
    if (recorded.length === 0) return;
    let state = before;
    const states = rows.map((row) => {
      state = evolveAll(
        this.#type,
        state,
        recorded.filter(({ seq }) => seq > row.after && seq <= row.version),
      );
      return state;
    });
    for (const id of rows.flatMap(({ commands }) => commands)) this.#cache.remember(id, { ok: true });
    this.#apply({ before, state, states, recorded });
  }

  #apply(change: Change<State, Event>): void {
    this.#state = change.state;
    for (const listener of [...this.#listeners]) {
      try {
        listener(change);
      } catch (error) {
        // The events are stored, so the command is done whatever a listener makes of them.
        this.#ports.log.error(errorFacts(error), 'a listener failed');
      }
    }
  }
}
