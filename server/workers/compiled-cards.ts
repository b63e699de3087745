// Cards that people send, checked and compiled by a worker: once each, never by the thread that serves the tables.
import { LRUCache } from 'lru-cache';
import { cardBoundsProblem } from '../../shared-engine/index.ts';
import { cardKeyOf, HOUSE_CARD_KEY, playingCard } from '../playing-card.ts';
import type { Cards, CheckedCard, PlayingCard } from '../ports.ts';
import type { SharedCard } from './shared-card.ts';
import { type CardRef, HOUSE_CARD_REF } from './task.ts';
import { workOptions } from './work-budgets.ts';
import type { WorkerPool } from './worker-pool.ts';

/** Cards held for a while after they were sent, so that the next to send one need not wait. */
const MAX_RECENT = 16;

const TOO_COSTLY =
  'Card: checking it took more time or memory than one card is given; use fewer patterns, or fix some of their variables with "where".';

export class CompiledCards implements Cards {
  readonly #pool: WorkerPool;
  /** What is compiled of a card lives as long as the card is in use. */
  readonly #compiled = new WeakMap<PlayingCard, Promise<SharedCard | null>>();
  /** By the key of a file as it was sent. */
  readonly #recent = new LRUCache<string, PlayingCard>({ max: MAX_RECENT });
  readonly #checking = new Map<string, Promise<CheckedCard | null>>();
  #count = 0;

  constructor(pool: WorkerPool) {
    this.#pool = pool;
  }

  /** Cards compiled since the start. */
  get count(): number {
    return this.#count;
  }

  async check(json: unknown, sender: string): Promise<CheckedCard | null> {
    const problem = cardBoundsProblem(json);
    if (problem !== null) return { ok: false, problems: [problem.message] };
    const sent = cardKeyOf(json);
    const known = this.#recent.get(sent);
    if (known) return accepted(known);
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
    this.#recent.set(sent, card);
    return accepted(card);
  }

  async #compile({ file }: PlayingCard, fairnessKey: string): Promise<SharedCard | null> {
    const options = workOptions('compile-card', fairnessKey, null);
    const result = await this.#pool.run(() => ({ kind: 'compile-card', file }), options).result;
    if (result?.kind !== 'compile-card') return null;
    this.#count++;
    return result.shared;
  }
}

function accepted({ file }: PlayingCard): CheckedCard {
  return { ok: true, choice: { kind: 'file', file } };
}
