// What a typical player would choose: the most frequent of several choices of the typical bot from one view.
import { chooseFor } from '../bots/index.ts';
import type { Kernel } from '../kernels/index.ts';
import { type AnswerChoice, type Random, type SeatView, stream } from '../rules/index.ts';

/** How often the bot chooses: it errs at random each time, and a class will make the choice it makes most often. */
const LOOKS = 7;

/** Null when the seat has nothing to answer; among equally frequent choices the first. */
export function typicalChoice(view: SeatView, kernel: Kernel, random: Random): AnswerChoice | null {
  const seed = String(random.below(0x1_0000_0000));
  const seen = new Map<string, { readonly choice: AnswerChoice; count: number }>();
  for (let look = 0; look < LOOKS; look++) {
    const choice = chooseFor('typical', view, kernel, stream(seed, `look ${look}`));
    if (choice === null) return null;
    const same = seen.get(JSON.stringify(choice));
    if (same) same.count++;
    else seen.set(JSON.stringify(choice), { choice, count: 1 });
  }
  const most = Math.max(...[...seen.values()].map(({ count }) => count));
  return [...seen.values()].find(({ count }) => count === most)!.choice;
}
