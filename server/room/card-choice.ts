// Which card a room or a class plays with.
import type { CardFile } from '../../shared-engine/index.ts';

/** The house card or a file of its owner's, as the validator let it through. */
export type CardChoice = { readonly kind: 'house' } | { readonly kind: 'file'; readonly file: CardFile };
