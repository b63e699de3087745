// Whether a verdict holds among neighbors of every style, and how that is said.
import { describe, expect, it } from 'vitest';
import { createRobustness, NEIGHBOR_STYLES } from '../../shared-engine/analysis/comparison/robustness.ts';
import type { Verdict } from '../../shared-engine/analysis/comparison/verdict.ts';
import { toldVerdict } from '../../shared-engine/analysis/review/choice-verdict.ts';
import { robustnessSentences } from '../../shared-engine/analysis/review/sentences/robustness.ts';
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
    for (const style of NEIGHBOR_STYLES) {
      expect(found.losses[style] > 0).toBe(['costly', 'a-little-worse'].includes(found.verdicts[style]));
    }
    expect(robustnessOf(offered, 'costly', { subject, budget: GLANCE })).toEqual(found);
  });

  it('is told by who the others are, and not as if it were costly where it is milder among most', () => {
    const said = (casual: Verdict, typical: Verdict, strong: Verdict): string => {
      const verdicts = { casual, typical, strong };
      const turns = NEIGHBOR_STYLES.filter((style) => verdicts[style] !== 'costly');
      const losses = { casual: 0, typical: 0, strong: 0 };
      return robustnessSentences({ verdicts, losses, turns }).join(' ');
    };
    expect(said('costly', 'costly', 'costly')).toBe(
      'It is costly whoever the others are: easy-going, club or strong players.',
    );
    const depends = 'It depends on who the others are.';
    const between = 'Our verdict takes the others for something between club and strong players.';
    const notCostly = 'So we do not call it costly.';
    expect(said('a-little-worse', 'costly', 'costly')).toBe(
      `${depends} Among club and strong players it is costly. Among easy-going players it is worse, but perhaps only a little.`,
    );
    expect(said('just-as-good', 'just-as-good', 'costly')).toBe(
      `${depends} Among strong players it is costly. Among easy-going and club players it is just as good. ${between}`,
    );
    expect(said('costly', 'cant-say', 'costly')).toBe(
      `${depends} Among easy-going and strong players it is costly. Among club players we can’t say. ${between}`,
    );
    // Between players of whom neither is the cause, the verdict is not explained by either.
    expect(said('costly', 'a-little-worse', 'a-little-worse')).toBe(
      `${depends} Among easy-going players it is costly. Among club and strong players it is worse, but perhaps only a little.`,
    );
    expect(said('a-little-worse', 'a-little-worse', 'a-little-worse')).toBe(
      `Whoever the others are, it is worse, but perhaps only a little. ${notCostly}`,
    );
    expect(said('best', 'cant-say', 'best')).toBe(
      `${depends} Among club players we can’t say. Among easy-going and strong players we found nothing better. ${notCostly}`,
    );
  });

  it('is told to be costly only where it is that among somebody, and otherwise by the worst that is sure', () => {
    const told = (casual: Verdict, typical: Verdict, strong: Verdict, verdict: Verdict = 'costly') => {
      const losses = { casual: 0, typical: 0, strong: 0 };
      return toldVerdict({
        verdict,
        robustness: { verdicts: { casual, typical, strong }, losses, turns: NEIGHBOR_STYLES },
      });
    };
    expect(told('just-as-good', 'best', 'costly')).toBe('costly');
    expect(told('just-as-good', 'just-as-good', 'a-little-worse')).toBe('a-little-worse');
    expect(told('just-as-good', 'cant-say', 'best')).toBe('cant-say');
    expect(told('best', 'best', 'best', 'a-little-worse')).toBe('a-little-worse');
    expect(toldVerdict({ verdict: 'costly' })).toBe('costly');
  });
});
