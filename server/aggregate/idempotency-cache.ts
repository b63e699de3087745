// Remembers how commands were answered, so that a repeated one gets the same answer and changes nothing again.
import { ACCEPTED, type Answer } from './decision.ts';

/** Answers remembered for each sender; a command that its sender repeats later than that many others is a new one. */
const MAX_PER_SENDER = 32;
/** Senders remembered; the one that has been silent longest is forgotten first. */
const MAX_SENDERS = 24;

/** A command's id begins with its sender and a slash, so that no sender makes those of another be forgotten. */
export class IdempotencyCache {
  readonly #bySender = new Map<string, Map<string, Answer>>();

  /** With these commands accepted, oldest first. */
  constructor(accepted: Iterable<string> = []) {
    for (const command of accepted) this.remember(command, ACCEPTED);
  }

  get(command: string): Answer | undefined {
    return this.#bySender.get(senderOf(command))?.get(command);
  }

  remember(command: string, answer: Answer): void {
    const sender = senderOf(command);
    const answers = this.#bySender.get(sender) ?? new Map<string, Answer>();
    this.#bySender.delete(sender);
    this.#bySender.set(sender, answers);
    answers.set(command, answer);
    dropOldest(answers, MAX_PER_SENDER);
    dropOldest(this.#bySender, MAX_SENDERS);
  }

  /** The commands remembered as accepted, those of the sender that has been silent longest first. */
  accepted(): string[] {
    const accepted: string[] = [];
    for (const answers of this.#bySender.values()) {
      answers.forEach(({ ok }, command) => {
        if (ok) accepted.push(command);
      });
    }
    return accepted;
  }
}

function senderOf(command: string): string {
  const slash = command.indexOf('/');
  return slash === -1 ? '' : command.slice(0, slash);
}

function dropOldest(map: Map<string, unknown>, max: number): void {
  if (map.size <= max) return;
  const [oldest] = map.keys();
  if (oldest !== undefined) map.delete(oldest);
}
