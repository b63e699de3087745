// Remembers how commands were answered, so that a repeated one gets the same answer and happens once.
import type { Refusal } from './decision.ts';
import type { Logged } from './event.ts';

export type Answer = { readonly ok: true } | Refusal;

/** Answers remembered a room; a command that comes later than that many others is a stranger. */
const KEPT = 256;

export class Answers {
  readonly #byCommand = new Map<string, Answer>();

  /** Commands that are in the log have been accepted. */
  static fromLog(log: readonly Logged[]): Answers {
    const answers = new Answers();
    for (const { command } of log) if (command !== null) answers.keep(command, { ok: true });
    return answers;
  }

  get(command: string): Answer | undefined {
    return this.#byCommand.get(command);
  }

  keep(command: string, answer: Answer): void {
    this.#byCommand.set(command, answer);
    if (this.#byCommand.size <= KEPT) return;
    const [oldest] = this.#byCommand.keys();
    if (oldest !== undefined) this.#byCommand.delete(oldest);
  }
}
