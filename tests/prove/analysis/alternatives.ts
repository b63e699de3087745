// Everything that could have been chosen, best tiles left first.
import { type Alternative, alternativesTo } from '../../../shared-engine/analysis/comparison/alternatives.ts';
import type { RecordedDecision } from '../../../shared-engine/analysis/review/deep-analysis.ts';
import { analyst } from './choices.ts';

export function alternativesIn({ offered, subject }: RecordedDecision): readonly Alternative[] {
  return alternativesTo(offered, subject, analyst.leaf)?.alternatives ?? [];
}
