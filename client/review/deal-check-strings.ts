// What the page says about checking a deal, and what such a check proves.
import type { DealFile, RoundCheck } from '../../shared-engine/index.ts';

export const DEAL_CHECK = {
  same: 'The server drew these tiles once for all of you, so there is no fixed deal of your own to check.',
  prepared:
    'A teacher prepared this deal. Its tiles were chosen, not left to chance, so there is nothing to check.',
  ownTiles: 'You dealt these tiles yourself, so there is nothing to check.',
  wentOn:
    'This round went on without the server, so nothing of its deal was opened. What the others held was drawn anew from then on. Your own choices are judged by what you knew.',
  nothing: 'No. The table has shown a fingerprint but nothing that opens it, so this deal cannot be checked.',
  aboutOwn:
    'Before the first pass the table showed a fingerprint of all four racks and the wall, and this page has kept it. Now you got the part that belongs to your rack. It says nothing of the other racks, which stay private, and not whether the shuffle was fair.',
  aboutOpen:
    'Before the first pass the table showed a fingerprint of all four racks and the wall, and this page has kept it. Now everything is open, so this page can deal and pass again and compare. It cannot tell whether the shuffle was fair.',
  words: 'The fingerprint in six words',
  fingerprint: 'Fingerprint shown before the first pass',
  seed: 'The number that all tiles were dealt from, shown at the end',
  failed: 'The check cannot be fetched just now. Close this and open it again.',
  save: 'Save as a file',
  saveAbout: 'The file can be checked later on the command line, without this page.',
} as const;

export function checkResult({ kind, rack }: DealFile, check: RoundCheck): string {
  if (check.ok) {
    return kind === 'own-rack'
      ? `Yes. Your ${rack.length} first tiles are the ones fixed before the first pass.`
      : 'Yes. All four racks, the wall and every pass come out again as they were fixed before the first pass.';
  }
  switch (check.reason) {
    case 'bad-seed':
      return 'This cannot be checked: the number is not complete.';
    case 'wrong-commitment':
      return 'No. This does not fit the fingerprint.';
    case 'wrong-rack':
      return 'No. Dealing from the number gives other tiles than yours.';
    case 'wrong-move':
      return 'No. A pass comes out otherwise than it was shown.';
    case 'wrong-end':
      return 'No. The passes lead to other racks than those shown.';
  }
}
