// The two sentences about a number chosen: tiles passed blind, the vote, tiles asked for across.
import { BASIS } from '../basis.ts';
import type { NumberReview } from '../review.ts';
import { inTenths } from '../rounding.ts';
import { startingBig, tilesOf, VOICES } from './phrases.ts';

type Judged = Omit<NumberReview, 'words' | 'judgement'>;

export function numberWords(review: Judged): readonly [string, string] {
  const { subject, whose } = VOICES[review.by];
  const chosen = `${subject} ${chose(review, review.played)}`;
  const stood = `with ${tilesOf(review.toGo)} to go and ${review.spare === 0 ? 'no tile' : tilesOf(review.spare)} to spare outside ${whose} nearest line`;
  return [startingBig(`${chosen}, ${stood}.`), `${compared(review)}${ruleOfThumb(review)}.`];
}

function chose({ kind }: Judged, value: number): string {
  switch (kind) {
    case 'blind':
      return value === 0 ? 'passed nothing on unseen' : `passed on ${value} of the arriving tiles unseen`;
    case 'vote':
      return value === 1 ? 'voted to go on' : 'voted to stop';
    case 'ask':
      return value === 0 ? 'asked for no tile across' : `asked for ${tilesOf(value)} across`;
  }
}

function compared(review: Judged): string {
  const { loss } = review;
  if (loss === 0) return `To ${option(review)} was also best under these assumptions`;
  const best = `Best under these assumptions was to ${option(review)}`;
  const gain = inTenths(loss);
  if (loss >= BASIS.smallLoss) return `${best}, ${tilesOf(gain)} nearer on average`;
  return `${best}, but ${gain === '0.0' ? 'the two can hardly be told apart' : `by only ${tilesOf(gain)}`}`;
}

/** The best option, after "to" or "was to". */
export function option({ kind, best }: Judged): string {
  switch (kind) {
    case 'blind':
      return best === 0 ? 'pass nothing on unseen' : `pass on ${best} unseen`;
    case 'vote':
      return best === 1 ? 'go on' : 'stop';
    case 'ask':
      return best === 0 ? 'ask for none' : `ask for ${best}`;
  }
}

/** The rule of thumb (common practice, no source) and whether the numbers agree with it. */
function ruleOfThumb(review: Judged): string {
  const { kind, spare } = review;
  switch (kind) {
    case 'blind': {
      const agree = asGoodAsBest(review, (blind) => blind > 0 === spare < 3);
      return `; the rule of thumb, to pass blind when fewer than 3 tiles can be spared, ${verdict(agree)}`;
    }
    case 'ask': {
      const agree = asGoodAsBest(review, (asked) => asked === Math.min(3, spare));
      return `; the rule of thumb, to ask for as many as can be spared, ${verdict(agree)}`;
    }
    case 'vote':
      return '';
  }
}

/** Whether a number that keeps the rule is too near the best one to be told apart in tenths. */
function asGoodAsBest({ options }: Judged, keepsRule: (value: number) => boolean): boolean {
  const most = Math.max(...options.map(({ nearness }) => nearness));
  return options.some(({ value, nearness }) => keepsRule(value) && inTenths(most - nearness) === '0.0');
}

function verdict(agree: boolean): string {
  return agree ? 'agrees' : 'points the other way here';
}
