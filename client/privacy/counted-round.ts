// What the server stores of a round of a published drill, in words: the choices as they are counted, and the questions.
import { isFace, STEPS, type Step } from '../../shared-engine/index.ts';
import { optionName, STEP_NAMES } from '../room/step-names.ts';
import { tileList } from '../tiles/tile-names.ts';

/** By step: tiles, a number, or how many went blind and then the tiles, as in `1:bam-1 west`. */
export function choicesText(value: unknown): string | null {
  if (typeof value !== 'object' || value === null) return null;
  const texts = Object.entries(value).flatMap(([key, chosen]) => {
    const step = STEPS.find((known) => known === key);
    return step && typeof chosen === 'string' ? `${STEP_NAMES[step]}: ${choiceText(step, chosen)}` : [];
  });
  return texts.length === 0 ? null : texts.join('; ');
}

export function questionsText(value: unknown): string | null {
  if (!Array.isArray(value)) return null;
  const texts = value.flatMap((question: unknown) => {
    if (typeof question !== 'object' || question === null || !('text' in question)) return [];
    return typeof question.text === 'string' ? `“${question.text}”` : [];
  });
  return texts.length === 0 ? null : `asked ${texts.join(' and ')}`;
}

function choiceText(step: Step, chosen: string): string {
  if (step === 'vote') return optionName('vote', Number(chosen));
  if (step === 'courtesy-ask') return optionName('ask', Number(chosen));
  const [tiles = '', blind = '0'] = chosen.split(':').reverse();
  const faces = tiles.split(' ').filter(isFace);
  const parts = [
    ...(faces.length > 0 ? [tileList(faces)] : []),
    ...(blind === '0' ? [] : [optionName('blind', Number(blind))]),
  ];
  return parts.length === 0 ? optionName('ask', 0) : parts.join(', ');
}
