// What the page says about checking a deal.
import type { DealCheck } from '../../shared-engine/index.ts';

export const DEAL_CHECK = {
  prepared:
    'A teacher prepared this deal: its tiles were chosen for you, not left to chance, so there is nothing to check.',
  about:
    'Before the first pass the table showed a fingerprint of the secret number from which all tiles were dealt. Now the number itself is open, so this page can deal again and compare.',
  fingerprint: 'Fingerprint shown before the first pass',
  seed: 'The number, opened at the close',
  save: 'Save as a file',
  saveAbout: 'The file can be checked later on the command line, without this page.',
} as const;

export function verdict(check: DealCheck, tiles: number): string {
  if (check.ok) {
    return `Yes. The number has exactly the fingerprint that was promised, and dealing from it gives exactly your ${tiles} first tiles.`;
  }
  switch (check.reason) {
    case 'bad-seed':
      return 'This cannot be checked: the number has not the form of one.';
    case 'wrong-commitment':
      return 'No. The number does not have the fingerprint that was promised.';
    case 'wrong-rack':
      return 'No. Dealing from the number gives other tiles than you were dealt.';
  }
}
