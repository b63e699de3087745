// An analyst for whom games after the exchange are a race: the win model fitted to play in which nobody looks at what the
// others lay open.
import type { Analyst } from '../../../shared-engine/analysis/comparison/analyze.ts';
import { createRollouts } from '../../../shared-engine/analysis/rollouts/simd.ts';
import { WIN_MODEL } from '../../../shared-engine/analysis/win-probability/model.ts';
import type { WinModel } from '../../../shared-engine/analysis/win-probability/model-format.ts';
import { createTableValue } from '../../../shared-engine/analysis/win-probability/table-value.ts';
import { fitModel } from '../../../shared-engine/tools/win-model/fit.ts';
import { samplesFor } from '../../../shared-engine/tools/win-model/samples.ts';
import { analyst, card, simd } from './choices.ts';

/** What hands weigh stays as in the product: only what follows from the play is fitted anew. */
export function racingAnalyst(seed: string, rounds: number): Analyst {
  const games = samplesFor({ seed, rounds, plays: 4, race: true }, simd, null);
  const winModel: WinModel = { ...fitModel(games, WIN_MODEL.steps), made: { ...WIN_MODEL.made, seed } };
  return {
    ...analyst,
    leaf: createTableValue(card, winModel),
    rollouts: createRollouts(simd, card, { winModel }),
    memory: null,
  };
}
