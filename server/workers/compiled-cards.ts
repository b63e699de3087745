// Cards that people send, checked and compiled by a worker: once each, never by the thread that serves the tables.
import { LRUCache } from 'lru-cache';
import { cardBoundsProblem } from '../../shared-engine/index.ts';
import { cardKeyOf, HOUSE_CARD_KEY, playingCard } from '../playing-card.ts';
import type { Cancel, Clock, PlayingCard } from '../ports.ts';
import type { Cards, CheckedCard } from '../work-ports.ts';
import type { SharedCard } from './shared-card.ts';
import { type CardRef, HOUSE_CARD_REF } from './task.ts';
import { workOptions } from './work-budgets.ts';
import type { WorkerPool } from './worker-pool.ts';

/** Cards held for a minute after they were sent, so that the next to send one need not wait. */
const MAX_RECENT = 16;
const RECENT_MS = 60_000;
/** Files as they were sent, of which is known what card they are, as long as somebody holds that card. */
const MAX_SENT = 1_000;

const TOO_COSTLY =
  'Card: checking it took more time or memory than one card is given; use fewer patterns, or fix some of their variables with "where".';

export class CompiledCards implements Cards {
  readonly #pool: WorkerPool;
  readonly #clock: Clock;
  /** What is compiled of a card lives as long as the card is in use. */
  readonly #compiled = new WeakMap<PlayingCard, Promise<SharedCard | null>>();
  /** By the key of a file as it was sent. */
  readonly #sent = new LRUCache<string, WeakRef<PlayingCard>>({ max: MAX_SENT });
  readonly #recent = new LRUCache<PlayingCard, Cancel>({ max: MAX_RECENT, dispose: (cancel) => cancel() });
  readonly #checking = new Map<string, Promise<CheckedCard | null>>();
  #count = 0;

  constructor(pool: WorkerPool, clock: Clock) {
    this.#pool = pool;
    this.#clock = clock;
  }

  /** Cards compiled since the start. */
  get count(): number {
    return this.#count;
  }

  async check(json: unknown, sender: string): Promise<CheckedCard | null> {
    const problem = cardBoundsProblem(json);
    if (problem !== null) return { ok: false, problems: [problem.message] };
    const sent = cardKeyOf(json);
    const known = this.#sent.get(sent)?.deref();
    if (known) return this.#accept(known);
    // A class that opens with one card at one moment waits for one check.
    const running = this.#checking.get(sent) ?? this.#check(json, sent, sender);
    this.#checking.set(sent, running);
    return running.finally(() => this.#checking.delete(sent));
  }

  /** The card for a task; null where it could not be compiled just now. */
  async refOf(card: PlayingCard, fairnessKey: string): Promise<CardRef | null> {
    if (card.key === HOUSE_CARD_KEY) return HOUSE_CARD_REF;
    const compiling = this.#compiled.get(card) ?? this.#compile(card, fairnessKey);
    this.#compiled.set(card, compiling);
    const shared = await compiling;
    if (shared === null) this.#compiled.delete(card);
    return shared && { key: card.key, shared };
  }

  async #check(file: unknown, sent: string, sender: string): Promise<CheckedCard | null> {
    const options = workOptions('check-card', sender, null);
    const pending = this.#pool.run(() => ({ kind: 'check-card', file }), options);
    const result = await pending.result;
    if (result?.kind !== 'check-card') {
      return pending.whyNot() === 'failed' ? { ok: false, problems: [TOO_COSTLY] } : null;
    }
    const { compiled } = result;
    if (!compiled.ok) return compiled;
    const card = playingCard({ kind: 'file', file: compiled.file });
    // It may be in use under another order of its entries.
    if (!this.#compiled.has(card)) {
      this.#compiled.set(card, Promise.resolve(compiled.shared));
      this.#count++;
    }
    this.#sent.set(sent, new WeakRef(card));
    return this.#accept(card);
  }

  #accept(card: PlayingCard): CheckedCard {
    const forget = this.#clock.after(RECENT_MS, () => this.#recent.delete(card));
    this.#recent.set(card, forget);
    return { ok: true, choice: { kind: 'file', file: card.file } };
  }

  async #compile({ file }: PlayingCard, fairnessKey: string): Promise<SharedCard | null> {
    const options = workOptions('compile-card', fairnessKey, null);
    const result = await this.#pool.run(() => ({ kind: 'compile-card', file }), options).result;
    if (result?.kind !== 'compile-card') return null;
    this.#count++;
    return result.shared;
  }
}
