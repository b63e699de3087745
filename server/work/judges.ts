// The deeper judgement of a choice, from the pool; how deep depends on how much is waiting.
import type { Judged, Judges } from '../ports.ts';
import { slipFor } from './cards.ts';
import type { Moment, Pool } from './pool.ts';
import type { Answer, Depth } from './task.ts';

export interface JudgesOptions {
  readonly pool: Pool;
  /** How closely a choice is looked at when there is time. */
  readonly depth: Depth;
  /** Tasks waiting from which on there is none. */
  readonly mostWaiting: number;
  /** Called with each choice: the first review of the same round will be wanted soon. */
  readonly onWork?: () => void;
}

export function pooledJudges({ pool, depth, mostWaiting, onWork }: JudgesOptions): Judges {
  /** A second try is a shorter one: the first may have been too long. */
  function depthAt({ attempt, waiting }: Moment): Depth {
    return attempt > 1 || waiting > mostWaiting ? 'shallow' : depth;
  }

  return {
    judge({ record, nth, card }) {
      onWork?.();
      const slip = slipFor(card);
      let used = depth;
      const order = pool.ask((moment) => {
        used = depthAt(moment);
        return { kind: 'judge', card: slip, record, nth, depth: used };
      }, 'live');
      const judged = (answer: Answer | null): Judged | null =>
        answer?.kind === 'judge' ? { judgement: answer.judgement, lowered: used !== depth } : null;
      return { result: order.answer.then(judged), giveWay: order.giveWay, callOff: order.callOff };
    },
  };
}
