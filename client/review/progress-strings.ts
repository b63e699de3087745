// The line chart of a review for those who do not see it.
import type { Journey } from './round-progress.ts';

export function journeyWords(kind: Journey['kind'], points: Journey['points']): string {
  const what = kind === 'outlook' ? 'Outlook in chances of 100' : 'Tiles to go';
  const figures = points.map(({ name, value }) => `${name} ${kind === 'outlook' ? value.toFixed(1) : value}`);
  return `${what}: ${figures.join(', ')}.`;
}
