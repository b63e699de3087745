// The two sentences about a number chosen: tiles passed blind, the vote, tiles asked for by courtesy.
import { BASIS, inTenths } from '../basis.ts';
import type { NumberFindings } from '../review.ts';
import { capitalized, closerBy, VOICES } from './phrases.ts';

export function numberSentences(choice: NumberFindings): readonly [string, string] {
  const { whose } = VOICES[choice.by];
  const rack = `${whose} rack was ${choice.toGo} away and had ${passers(choice.spare)} ${whose} closest hand doesn't need`;
  return [`${chosenPhrase(choice)}; ${rack}.`, `${comparedPhrase(choice)}${ruleOfThumb(choice)}.`];
}

function tileCount(count: number): string {
  return count === 1 ? '1 tile' : `${count} tiles`;
}

function passers(count: number): string {
  if (count === 0) return 'no passers, tiles';
  return count === 1 ? '1 passer, a tile' : `${count} passers, tiles`;
}

function chosenPhrase({ kind, by, played }: NumberFindings): string {
  const { subject } = VOICES[by];
  switch (kind) {
    case 'blind':
      return capitalized(`${subject} passed ${played === 0 ? 'nothing' : tileCount(played)} blind`);
    case 'vote':
      return capitalized(`${subject} voted to ${played === 1 ? 'continue' : 'stop'}`);
    case 'ask':
      return `Courtesy: ${subject} asked for ${played}`;
  }
}

function comparedPhrase(choice: NumberFindings): string {
  const { loss } = choice;
  if (loss === 0) return `No better choice was found than to ${optionPhrase(choice)}`;
  if (loss >= BASIS.smallLoss) return `Better: ${optionPhrase(choice)}, ${closerBy(loss)}`;
  const by = inTenths(loss) === '0.0' ? 'by too little to notice' : closerBy(loss);
  return `Hardly better: ${optionPhrase(choice)}, ${by}`;
}

/** The best option, after "to" or "Better:". */
export function optionPhrase({ kind, best }: NumberFindings): string {
  return numberPhrase(kind, best);
}

/** "pass 2 blind", "continue", "ask for 0". */
export function numberPhrase(kind: NumberFindings['kind'], number: number): string {
  switch (kind) {
    case 'blind':
      return number === 0 ? 'pass nothing blind' : `pass ${number} blind`;
    case 'vote':
      return number === 1 ? 'continue' : 'stop';
    case 'ask':
      return `ask for ${number}`;
  }
}

/** The rule of thumb (common practice, no source) and whether the numbers agree with it. */
function ruleOfThumb(choice: NumberFindings): string {
  const { kind, spare } = choice;
  switch (kind) {
    case 'blind': {
      const agree = asGoodAsBest(choice, (blind) => blind > 0 === spare < 3);
      return `; the rule of thumb, to pass blind with fewer than 3 passers, ${agreement(agree)}`;
    }
    case 'ask': {
      const agree = asGoodAsBest(choice, (asked) => asked === Math.min(3, spare));
      return `; the rule of thumb, to ask for as many as you have passers, ${agreement(agree)}`;
    }
    case 'vote':
      return '';
  }
}

/** Whether a number that follows the rule is too near the best one to be told apart in tenths. */
function asGoodAsBest({ options }: NumberFindings, followsRule: (value: number) => boolean): boolean {
  const most = Math.max(...options.map(({ nearness }) => nearness));
  return options.some(({ value, nearness }) => followsRule(value) && inTenths(most - nearness) === '0.0');
}

function agreement(agree: boolean): string {
  return agree ? 'agrees' : 'points the other way here';
}
