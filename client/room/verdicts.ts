// The five verdicts on a choice, in the same words wherever one is shown.
import { VERDICT_NAMES, type Verdict } from '../../shared-engine/index.ts';

const LEGEND: Readonly<Record<Verdict, string>> = {
  best: 'Nothing better was found.',
  'just-as-good': 'If another choice is better at all, it is too little to matter.',
  'a-little-worse': 'Something better was there; it may matter little.',
  costly: 'Something clearly better was there. Look at this one.',
  'cant-say': 'We could not tell.',
};

function wordsFor(verdict: Verdict): { readonly name: string; readonly about: string } {
  return { name: VERDICT_NAMES[verdict], about: LEGEND[verdict] };
}

export const VERDICTS: Readonly<Record<Verdict, { readonly name: string; readonly about: string }>> = {
  best: wordsFor('best'),
  'just-as-good': wordsFor('just-as-good'),
  'a-little-worse': wordsFor('a-little-worse'),
  costly: wordsFor('costly'),
  'cant-say': wordsFor('cant-say'),
};
