// Hands for tests: each task waits until the test says how it ends.
import type { Hand } from '../../server/work/hand.ts';
import type { Answer, Task } from '../../server/work/task.ts';

/** A task that a hand has taken up and not done yet. */
export interface Taken {
  readonly task: Task;
  done(answer: Answer): void;
  die(): void;
}

export interface Hands {
  readonly newHand: () => Hand;
  /** Oldest first; a task that is done or has died leaves. */
  readonly taken: readonly Taken[];
  /** Hands made, and those of them that were given up. */
  readonly made: () => number;
  readonly ended: () => number;
}

export function scriptedHands(): Hands {
  const taken: Taken[] = [];
  let made = 0;
  let ended = 0;
  const newHand = (): Hand => {
    made++;
    return {
      run: (task) =>
        new Promise((resolve, reject) => {
          const leave = () => void taken.splice(taken.indexOf(item), 1);
          const item: Taken = {
            task,
            done(answer) {
              leave();
              resolve(answer);
            },
            die() {
              leave();
              reject(new Error('the hand died'));
            },
          };
          taken.push(item);
        }),
      async end() {
        ended++;
      },
    };
  };
  return { newHand, taken, made: () => made, ended: () => ended };
}

/** Lets everything that is due without a clock happen. */
export async function settled(): Promise<void> {
  for (let turn = 0; turn < 5; turn++) await new Promise((resolve) => setImmediate(resolve));
}
