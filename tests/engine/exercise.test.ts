// One's own costly choices as exercises: which there are, what was known then, and how an answer is graded.
import { describe, expect, it } from 'vitest';
import { recordWithAnswer } from '../../shared-engine/analysis/belief/situation.ts';
import { decisionsIn } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { exerciseAt, exercisesOf, gradeOf } from '../../shared-engine/practice/exercise.ts';
import { unpackPlay } from '../../shared-engine/practice/round-play.ts';
import { decisionFor, stepOfOutcome } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { bagOf, facesOf, takeFrom } from '../../shared-engine/rules/tiles/bag.ts';
import { storedChoice, storedRound } from '../kit/stored-rounds.ts';

describe('the exercises of a round', () => {
  it('are its own costly choices, one for each step', () => {
    const costly = { verdict: 'costly', loss: 3, halfWidth: 0.5 } as const;
    const { summary } = storedRound('one', {
      choices: [
        storedChoice({ step: 'first-right' }),
        storedChoice({ step: 'first-left', kind: 'blind', ...costly }),
        storedChoice({ step: 'first-left', ...costly }),
        storedChoice({ step: 'second-left', by: 'stand-in', ...costly }),
        storedChoice({ step: 'second-across', verdict: 'a-little-worse', loss: 1, halfWidth: 0.4 }),
      ],
    });
    expect(exercisesOf([summary])).toEqual([
      {
        id: `${summary.id}/first-left`,
        round: summary.id,
        step: 'first-left',
        playedAt: summary.playedAt,
        kinds: ['blind', 'left'],
      },
    ]);
  });

  it('ask what the table asked, of the same rack and from what was known', () => {
    const { record } = unpackPlay(storedRound('one').detail.play)!;
    for (const [place, went] of record.steps.entries()) {
      const step = stepOfOutcome(went);
      const exercise = exerciseAt(record, step)!;
      expect(exercise.record.steps).toEqual(record.steps.slice(0, place));
      expect(exercise.decision.step).toBe(step);
      if (went.kind !== 'move') continue;
      expect(takeFrom(bagOf(exercise.rack), went.gave)).not.toBeNull();
      const { decision } = exercise;
      if (decision.kind !== 'pass') throw new Error('no pass');
      if (step !== 'courtesy-pass') {
        expect(decision).toEqual(
          decisionFor({ phase: 'passing', step: went.step as 'first-right' }, 0, record.terms),
        );
      }
      const tiles = facesOf(bagOf(exercise.rack.filter((face) => face !== 'joker').slice(0, decision.count)));
      const answer = { kind: 'pass', step: went.step, tiles, blind: 0 } as const;
      const added = decisionsIn(recordWithAnswer(exercise.record, answer, 'player')).length;
      expect(added).toBeGreaterThan(decisionsIn(exercise.record).length);
    }
    expect(exerciseAt({ ...record, steps: [] }, 'vote')).toBeNull();
  });

  it('are graded by the dearer part of the answer', () => {
    expect(gradeOf(['best'])).toBe('easy');
    expect(gradeOf(['best', 'just-as-good'])).toBe('good');
    expect(gradeOf(['a-little-worse', 'best'])).toBe('hard');
    expect(gradeOf(['best', 'costly'])).toBe('again');
  });
});
