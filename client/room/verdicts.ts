// The five verdicts on a choice, in the same words wherever one is shown.
import type { Verdict } from '../../shared-engine/index.ts';

export const VERDICTS: Readonly<Record<Verdict, { readonly name: string; readonly about: string }>> = {
  best: { name: 'Best', about: 'Nothing better was found.' },
  'just-as-good': {
    name: 'Just as good',
    about: 'If another choice is better at all, it is too little to matter.',
  },
  'a-little-worse': {
    name: 'A little worse',
    about: 'Something better was there; it may matter little.',
  },
  costly: { name: 'Costly', about: 'Something clearly better was there. Look at this one.' },
  'cant-say': { name: 'Can’t say', about: 'We could not tell.' },
};
