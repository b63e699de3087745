// The verdicts of a judgement in a line: one for each part of the choice.
import { VERDICTS } from '../../room/verdicts.ts';
import type { Judgement } from './judged.ts';
import { QUESTION } from './strings.ts';

export function verdictWords(judgement: Judgement | null): string {
  if (judgement === null || judgement.is === 'failed') return QUESTION.notJudged;
  const isOne = judgement.parts.length === 1;
  const names = judgement.parts.flatMap(({ choice: { kind, analysis }, story }) => {
    if (analysis.depth !== 'deep') return [];
    const { name } = VERDICTS[story.verdict];
    const part = kind === 'blind' || kind === 'pass' ? QUESTION.parts[kind] : null;
    return [isOne || part === null ? name : `${part}: ${name}`];
  });
  return names.length > 0 ? names.join(' · ') : '…';
}
