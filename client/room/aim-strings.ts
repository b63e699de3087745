// What the page says about the aim a player named before a pass, and what became of it.
import type { PassReview, Review } from '../../shared-engine/index.ts';
import { sentenceList } from '../tiles/tile-names.ts';
import { capital } from './seat-names.ts';

export const AIM = {
  question: 'Say your aim first',
  about: 'Which families do your tiles point to? Choose up to two; the review comes back to them.',
  title: 'Your aim',
} as const;

/** One sentence for each family said before this pass, or nothing. */
export function aimWords(
  said: readonly string[],
  { open, openAfter }: Pick<PassReview, 'open' | 'openAfter'>,
  families: Review['families'],
): readonly string[] {
  // A family that was never near has no name in the review; its id is the same words with dashes.
  const names = (id: string) => families[id] ?? id.replaceAll('-', ' ');
  return said.map((id) => {
    const name = capital(names(id));
    if (!open.includes(id)) {
      const near = open.length > 0 ? `; within reach were ${sentenceList(open.map(names))}` : '';
      return `${name} was not among the families within reach${near}.`;
    }
    return openAfter.includes(id)
      ? `${name} was within reach, and your pass kept it so.`
      : `${name} was within reach, and your pass let it go.`;
  });
}
