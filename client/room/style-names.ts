// What the ways of the bots are called.
import type { StyleName } from '../../shared-engine/index.ts';

export const STYLE_WORDS: Readonly<Record<StyleName, { readonly name: string; readonly about: string }>> = {
  casual: { name: 'Easy-going', about: 'plays by feel and changes its mind' },
  typical: { name: 'Club evening', about: 'passes what most players pass' },
  strong: { name: 'Keen', about: 'keeps the best it can for itself' },
  guarded: { name: 'Careful', about: 'hands you as little as it can' },
  thoughtful: { name: 'Thoughtful', about: 'tries each pass out in its head first' },
  random: { name: 'Blindfold', about: 'passes without looking' },
};
