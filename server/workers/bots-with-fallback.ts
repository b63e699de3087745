// Bots that never hold a round up: for one that throws, never answers or answers illegally the simplest choice is made.
import { choiceObjection, stepOf } from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Clock } from '../ports.ts';
import type { Bots } from '../work-ports.ts';
import { simplestLegal } from './bots.ts';

/** How long a bot may take to choose, in milliseconds. */
export const BOT_TIMEOUT_MS = 5000;

export function botsWithFallback(bots: Bots, clock: Clock, log: Log): Bots {
  return {
    async choose(request) {
      const { style, view } = request;
      const simplest = simplestLegal(view);
      const about = { style, step: stepOf(view.stage) };
      try {
        const choice = await inTime(bots.choose(request), clock);
        if (choice !== null && choiceObjection(view, choice) === null) return choice;
        log.error(about, choice === null ? 'a bot took too long' : 'a bot answered illegally');
      } catch (error) {
        log.error({ ...about, ...errorFacts(error) }, 'a bot failed');
      }
      return simplest;
    },
  };
}

/** Null when it takes longer than that. */
function inTime<T>(answer: Promise<T>, clock: Clock): Promise<T | null> {
  return new Promise((resolve, reject) => {
    const cancel = clock.after(BOT_TIMEOUT_MS, () => resolve(null));
    answer.then(resolve, reject).finally(cancel);
  });
}
