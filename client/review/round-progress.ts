// A rack's way through the round as a row of numbers for a chart.
import type { PassReview, Review } from '../../shared-engine/index.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { JUDGEMENT } from './deep-strings.ts';

export interface JourneyPoint {
  readonly name: string;
  readonly value: number;
  /** Half the width of the interval, 0 for what is known exactly. */
  readonly within: number;
}

export interface Journey {
  readonly kind: 'outlook' | 'toGo';
  readonly points: readonly JourneyPoint[];
}

/** Outlook after each pass once every pass has been played on; before that the tiles to go, counted. */
export function journeyOf({ choices, toGoStart }: Review): Journey {
  const passes = choices.filter((choice): choice is PassReview => choice.kind === 'pass');
  const outlook = passes.flatMap(({ step, judgement }) => {
    const own = judgement.depth === 'deep' ? judgement.finalists[judgement.played] : undefined;
    return own ? [{ name: STEP_NAMES[step], ...own.outlook }] : [];
  });
  if (outlook.length > 1 && outlook.length === passes.length) return { kind: 'outlook', points: outlook };
  const toGo = passes.map(({ step, toGoAfter }) => ({ name: STEP_NAMES[step], value: toGoAfter, within: 0 }));
  return { kind: 'toGo', points: [{ name: JUDGEMENT.start, value: toGoStart, within: 0 }, ...toGo] };
}
