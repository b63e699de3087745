// What the styles of the bots are called.
import type { StyleName } from '../../shared-engine/index.ts';

export const STYLE_NAMES: Readonly<Record<StyleName, { readonly name: string; readonly about: string }>> = {
  casual: { name: 'Easy-going', about: 'passes by feel and changes its mind' },
  typical: { name: 'Club player', about: 'passes what most players pass' },
  strong: { name: 'Strong', about: 'keeps the best it can for itself' },
  guarded: { name: 'Careful', about: 'gives you as little as it can' },
  steady: { name: 'Steady', about: 'plays as the steady player of your review' },
  thoughtful: { name: 'Thoughtful', about: 'tries out each pass before it chooses' },
  random: { name: 'Random', about: 'passes without looking' },
};
