// A commitment as six words; the list they come from is large, so this part is fetched only when words are shown.
import { BITS_A_WORD, ROOT_WORDS, rootWords } from '../../shared-engine/index.ts';
import { SIX_WORDS } from './strings.ts';

export function CommitmentWords({ commitment }: { readonly commitment: string }) {
  return (
    <p>
      <b class="six-words">{rootWords(commitment).join(' ')}</b>
    </p>
  );
}

/** What equal words are worth, for those who ask. */
export function WordsAbout() {
  return (
    <details>
      <summary>{SIX_WORDS.sure}</summary>
      <p>{WORDS_ABOUT}</p>
    </details>
  );
}

const WORDS_ABOUT = `Sure enough against a mistake, and against anybody who changes a deal later. The words stand for ${ROOT_WORDS * BITS_A_WORD} of the fingerprint’s 256 bits. Only the whole fingerprint, which the review shows, also rules out a server that searched beforehand for two deals with the same words.`;
