// Whether a verdict holds among neighbors of every style, and how that is said.
import { describe, expect, it } from 'vitest';
import { createRobustness } from '../../shared-engine/analysis/comparison/robustness.ts';
import { robustnessSentence } from '../../shared-engine/analysis/review/sentences/robustness.ts';
import { GLANCE } from '../prove/analysis/budgets.ts';
import { analyst, choicesFrom, simd } from '../prove/analysis/choices.ts';

describe('a verdict among neighbors of other styles', () => {
  const [{ offered, subject }] = choicesFrom('among neighbors', 1) as [
    ReturnType<typeof choicesFrom>[number],
  ];

  it('is another one exactly where it is said to turn, and the same when asked again', () => {
    const robustnessOf = createRobustness(analyst, simd);
    const found = robustnessOf(offered, 'costly', { subject, budget: GLANCE })!;
    const turned = Object.entries(found.verdicts).flatMap(([style, verdict]) =>
      verdict === 'costly' ? [] : [style],
    );
    expect(found.turns).toEqual(turned);
    expect(robustnessOf(offered, 'costly', { subject, budget: GLANCE })).toEqual(found);
  });

  it('is told by who the others are', () => {
    const costly = { casual: 'costly', typical: 'costly', strong: 'costly' } as const;
    expect(robustnessSentence({ verdicts: costly, turns: [] })).toBe(
      'It is costly whoever the others are: easy-going players, club players and strong players.',
    );
    const verdicts = { ...costly, casual: 'just-as-good' } as const;
    expect(robustnessSentence({ verdicts, turns: ['casual'] })).toBe(
      'It depends on who the others are: among easy-going players it is just as good.',
    );
    const twice = { casual: 'a-little-worse', typical: 'a-little-worse', strong: 'costly' } as const;
    expect(robustnessSentence({ verdicts: twice, turns: ['casual', 'typical'] })).toBe(
      'It depends on who the others are: among easy-going players and club players it is only a little worse.',
    );
  });
});
