// Whether a verdict holds whoever the others are: the same choice compared among casual, typical and strong neighbors.
import type { CompiledCard } from '../../card/index.ts';
import { createTileValues, type SimdModule } from '../../kernels/index.ts';
import { createChoiceModel, type StyleName } from '../../policy/index.ts';
import { createBelief } from '../belief/belief.ts';
import type { OfferedChoice } from '../belief/situation.ts';
import type { Neighbors } from '../rollouts/batch.ts';
import { type AnalysisTerms, type Analyst, analyze } from './analyze.ts';
import type { Comparison } from './comparison.ts';
import { thousandth } from './estimate.ts';
import type { Verdict } from './verdict.ts';

export const NEIGHBOR_STYLES = ['casual', 'typical', 'strong'] as const satisfies readonly StyleName[];
export type NeighborStyle = (typeof NEIGHBOR_STYLES)[number];

/** How sharply each is taken to have passed so far, as `createChoiceModel` has it, and how it plays on. */
const PLAY: Readonly<Record<NeighborStyle, { readonly temperature: number; readonly neighbors: Neighbors }>> =
  {
    casual: { temperature: 0.5, neighbors: 'casual' },
    typical: { temperature: 0.25, neighbors: 'typical' },
    strong: { temperature: 0.1, neighbors: 'alike' },
  };

export interface Robustness {
  readonly verdicts: Readonly<Record<NeighborStyle, Verdict>>;
  /** What is lost among them where that is told, in wins in 100 games; 0 where their verdict knows nothing better. */
  readonly losses: Readonly<Record<NeighborStyle, number>>;
  /** Styles of neighbors among whom the verdict is another one; none where it holds. */
  readonly turns: readonly NeighborStyle[];
}

/** Compares choices among neighbors of each style. */
export type RobustnessOf = (
  offered: OfferedChoice,
  verdict: Verdict,
  terms: AnalysisTerms,
) => Robustness | null;

/** Three times the work of a comparison for each choice: for a choice that is asked about, not for all of them. */
export function createRobustness(analyst: Analyst, simd: SimdModule): RobustnessOf {
  const among = analystsAmong(analyst.card, analyst, simd);
  return (offered, verdict, terms) => {
    const found = among.map(([, other]) => analyze(other, offered, terms));
    const [casual, typical, strong] = found;
    if (!casual || !typical || !strong) return null;
    return {
      verdicts: { casual: casual.verdict, typical: typical.verdict, strong: strong.verdict },
      losses: { casual: lossIn(casual), typical: lossIn(typical), strong: lossIn(strong) },
      turns: NEIGHBOR_STYLES.filter((_, nth) => found[nth]?.verdict !== verdict),
    };
  };
}

function lossIn({ verdict, bestAlternative }: Comparison): number {
  const isTold = verdict === 'costly' || verdict === 'a-little-worse';
  return isTold && bestAlternative ? thousandth(bestAlternative.difference.value) : 0;
}

function analystsAmong(
  card: CompiledCard,
  analyst: Analyst,
  simd: SimdModule,
): readonly (readonly [NeighborStyle, Analyst])[] {
  const tileValues = createTileValues(simd, card);
  return NEIGHBOR_STYLES.map((style) => {
    const { temperature, neighbors } = PLAY[style];
    const belief = createBelief(createChoiceModel(tileValues, temperature));
    return [style, { ...analyst, belief, neighbors, memory: null }];
  });
}
