// Everything that thinks, put together: quick answers in a lane of their own, closer looks on the hands that are left.
import { loadVectors } from '../../shared-engine/index.ts';
import type { ReviewSettings } from '../config.ts';
import type { Log } from '../log.ts';
import type { Bots, Clock, Drills, Judges, Reviewer } from '../ports.ts';
import { botsInProcess } from './bots.ts';
import { createDesk } from './desk.ts';
import { pooledDrills } from './drills.ts';
import { type Hand, handInProcess } from './hand.ts';
import { pooledJudges } from './judges.ts';
import { Pool } from './pool.ts';
import { pooledBots } from './pooled-bots.ts';
import { pooledReviewer } from './reviewer.ts';
import { handInThread } from './thread.ts';

/** A first review or a bot's choice takes a twentieth of a second; a thread that has to start takes a second more. */
const PROMPT_PATIENCE_MS = 10_000;
/** A closer look takes up to three seconds of a core, which may be shared by many. */
const CLOSE_PATIENCE_MS = 120_000;

export interface Workroom {
  readonly bots: Bots;
  readonly reviewer: Reviewer;
  readonly drills: Drills;
  /** Missing where first answers are all that is wanted. */
  readonly judges?: Judges;
  /** Lets everything go; who waits for an answer gets none. */
  close(): Promise<void>;
}

export function openWorkroom({ workers, depth, queue }: ReviewSettings, clock: Clock, log: Log): Workroom {
  const desk = workers === 0 ? loadVectors().then(createDesk) : null;
  const newHand = (behind: boolean) => (): Hand => (desk ? handInProcess(desk) : handInThread({ behind }));
  // Nobody waits for a first review or a bot behind a closer look.
  const prompt = new Pool({ clock, log, newHand: newHand(false), hands: 1, patience: PROMPT_PATIENCE_MS });
  const close = new Pool({
    clock,
    log,
    newHand: newHand(true),
    hands: Math.max(1, workers),
    patience: CLOSE_PATIENCE_MS,
  });
  const judges =
    depth === 'quick'
      ? null
      : pooledJudges({
          pool: close,
          // In process, tables wait while a choice is looked at.
          depth: workers === 0 ? 'shallow' : depth,
          mostWaiting: queue * Math.max(1, workers),
          onWork: () => prompt.warm(),
        });
  return {
    bots: pooledBots(prompt, botsInProcess(log)),
    reviewer: pooledReviewer(prompt),
    drills: pooledDrills(close),
    ...(judges && { judges }),
    async close() {
      await Promise.all([prompt.close(), close.close()]);
    },
  };
}
