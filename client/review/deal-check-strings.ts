// What the page says about checking a deal.
import type { DealCheck } from '../../shared-engine/index.ts';

export const DEAL_CHECK = {
  prepared:
    'A teacher prepared this deal. Its tiles were chosen, not left to chance, so there is nothing to check.',
  about:
    'All tiles were dealt from a secret number. Before the first pass the table showed its fingerprint. Now the number is open, so this page can deal again and compare.',
  fingerprint: 'Fingerprint shown before the first pass',
  seed: 'The number, shown at the end',
  failed: 'The check cannot be fetched just now. Close this and open it again.',
  save: 'Save as a file',
  saveAbout: 'The file can be checked later on the command line, without this page.',
} as const;

export function checkResult(check: DealCheck, tiles: number): string {
  if (check.ok) {
    return `Yes. The number fits the fingerprint, and dealing from it gives exactly your ${tiles} first tiles.`;
  }
  switch (check.reason) {
    case 'bad-seed':
      return 'This cannot be checked: the number is not complete.';
    case 'wrong-commitment':
      return 'No. The number does not fit the fingerprint.';
    case 'wrong-rack':
      return 'No. Dealing from the number gives other tiles than yours.';
  }
}
