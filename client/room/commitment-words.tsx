// A commitment as six words; the list they come from is large, so this part is fetched only when words are shown.
import { BITS_A_WORD, ROOT_WORDS, rootWords } from '../../shared-engine/index.ts';

export function CommitmentWords({ commitment }: { readonly commitment: string }) {
  return (
    <p>
      <b class="six-words">{rootWords(commitment).join(' ')}</b>
    </p>
  );
}

/** What equal words are worth. */
export const WORDS_ABOUT = `Six words say ${ROOT_WORDS * BITS_A_WORD} of the fingerprint’s 256 bits: enough against a mistake and against anybody who changes a deal later, but a server that plans ahead could look for two deals with the same words.`;
