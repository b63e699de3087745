// Everything that could have been chosen instead, best kept rack first.
import { alternativesTo, type Question, type RaceAlternative } from '../../../shared-engine/index.ts';
import { analyst } from './choices.ts';

export function rivalsOf(offered: Question['offered'], asked: Question['asked']): readonly RaceAlternative[] {
  return alternativesTo(offered, asked, analyst.leaf)?.alternatives ?? [];
}
