// A review in words alone: to be heard, or to be saved and sent.
import type { Review } from '../../shared-engine/index.ts';
import { VERDICTS } from '../room/verdicts.ts';
import { choiceName, REVIEW, startToEnd } from './strings.ts';

/** The one thing first, then the step that it speaks of. */
export function spokenSentences({ story, choices, ...review }: Review): readonly string[] {
  const choice = choices[story.opened];
  const more = choice ? [`${choiceName(choice)}.`, ...(story.choices[story.opened]?.sentences ?? [])] : [];
  return [...story.headline, startToEnd(review), ...more.filter((one) => !story.headline.includes(one))];
}

/** The whole review in words, a step a paragraph. */
export function reviewText(review: Review): string {
  const { story, choices } = review;
  const steps = choices.map((choice, place) => {
    const told = story.choices[place];
    const verdict = told ? VERDICTS[told.verdict].name : '';
    return `${choiceName(choice)}: ${verdict}\n${told?.sentences.join(' ') ?? ''}`;
  });
  const ledger = story.ledger.length > 0 ? [`${REVIEW.ledger}\n${story.ledger.join(' ')}`] : [];
  return `${[REVIEW.title, story.headline.join(' '), startToEnd(review), ...ledger, ...steps].join('\n\n')}\n`;
}
