// What a typical player chooses in a drawn deal, with noise that the drawing never saw, and which mistakes that is.
import { recordWithAnswer } from '../../../shared-engine/analysis/belief/situation.ts';
import { SHALLOW_BUDGET } from '../../../shared-engine/analysis/comparison/budget.ts';
import { analyzeDecision, decisionsIn } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import type {
  choiceOfMistake,
  MistakeCategory,
} from '../../../shared-engine/analysis/review/mistake-categories.ts';
import { mistakesOf } from '../../../shared-engine/analysis/review/mistakes.ts';
import { reviewRound } from '../../../shared-engine/analysis/review/review-round.ts';
import { chooseFor } from '../../../shared-engine/bots/choose.ts';
import { type DrawnDeal, drawDeal } from '../../../shared-engine/practice/drawn-deal.ts';
import { type Exercise, exerciseAt } from '../../../shared-engine/practice/exercise.ts';
import { stream } from '../../../shared-engine/rules/deal/random.ts';
import type { PendingDecision } from '../../../shared-engine/rules/exchange/pending-decision.ts';
import type { PublicStage, SeatView } from '../../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../../kit/reviews.ts';
import { analyst } from './choices.ts';

/** Neither analysis of the drawing used its deals. */
const SEED = 0x7e_ed;

export interface Tempted {
  /** What was chosen: tiles, or a number of which kind, or both. */
  readonly choices: readonly ReturnType<typeof choiceOfMistake>[];
  readonly mistakes: readonly MistakeCategory[];
}

/** The deal to the end of the search; a kind of null for one by chance. */
export function drawnDeal(kind: MistakeCategory | null, seed: string): DrawnDeal {
  const looking = drawDeal({ analyst, kernel: houseKernel }, { kind, firstPass: false }, seed);
  for (let next = looking.next(); ; next = looking.next()) if (next.done) return next.value;
}

/** Choice `nth` of a typical player in this deal. */
export function temptedIn({ record, step }: DrawnDeal, seed: string, nth: number): Tempted {
  const exercise = exerciseAt(record, step)!;
  const answer = chooseFor('typical', viewOf(exercise), houseKernel, stream(seed, `tempted ${nth}`))!;
  const answered = recordWithAnswer(exercise.record, answer, 'player');
  const { choices } = reviewRound(answered, houseKernel);
  const places = [...choices.keys()].slice(decisionsIn(exercise.record).length);
  const judged = places.map((place) => ({
    ...choices[place]!,
    analysis: analyzeDecision(analyst, answered, place, { budget: SHALLOW_BUDGET, seed: SEED }),
  }));
  return {
    choices: judged.map(({ kind }) => kind),
    mistakes: judged.flatMap((choice) => mistakesOf(choice)),
  };
}

/** As the seat sees the open step. */
function viewOf({ record, rack, decision }: Exercise): SeatView {
  const { dealer, terms } = record;
  const facts = { dealer, terms, commitment: null, stage: stageOf(decision) };
  return { audience: 'seat', ...facts, rack, answer: null, record, ownLeaf: null };
}

function stageOf(decision: PendingDecision): PublicStage {
  const answered = [false, false, false, false] as const;
  switch (decision.kind) {
    case 'vote':
      return { phase: 'voting', answered };
    case 'ask':
      return { phase: 'asking', answered };
    case 'pass': {
      const { step, count } = decision;
      if (step === 'courtesy-pass')
        return { phase: 'giving', counts: [count, count, count, count], answered };
      return { phase: 'passing', step, answered };
    }
  }
}
