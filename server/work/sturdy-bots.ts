// Bots that cannot hold a round up: one that throws, never answers or answers nonsense is stood in for.
import { openStep } from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import type { Bots, Clock } from '../ports.ts';
import { isLegal, simplestLegal } from './bots.ts';

/** How long a bot may take to choose, in milliseconds. */
export const BOT_PATIENCE_MS = 5000;

export function sturdyBots(bots: Bots, clock: Clock, log: Log): Bots {
  return {
    async choose(request) {
      const simplest = simplestLegal(request.view);
      const about = { style: request.style, step: openStep(request.view.stage) };
      try {
        const choice = await inTime(bots.choose(request), clock);
        if (choice !== null && isLegal(choice, simplest, request.view)) return choice;
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
    const callOff = clock.after(BOT_PATIENCE_MS, () => resolve(null));
    answer.then(resolve, reject).finally(callOff);
  });
}
