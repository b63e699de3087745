// The kinds of mistake, each in words.

/** Each category in words; `mistakesOf` decides which of them apply to a choice. */
export const MISTAKE_CATEGORIES = {
  'new-multiple': 'Broke up a pair or more that had just formed',
  'broken-multiple': 'Broke up a pair or more',
  'pair-given': 'Gave a pair away',
  'like-numbers-given': 'Gave like numbers away',
  'same-suit-given': 'Gave three of one suit in a row or all even or all odd',
  'flower-given': 'Gave a flower away',
  'neighbor-fed': 'Gave a neighbor what it needed',
  'lone-honor-kept': 'Kept a lone wind or dragon',
  'committed-too-soon': 'Let sections go too soon',
  'committed-too-late': 'Kept too many sections open for too long',
  'pairs-chased': 'Played for pairs that no joker fills',
  'concealed-chased': 'Played for a hand that must stay concealed',
  'tiles-gone': 'Waited for tiles that were gone',
  'jokers-for-pairs': 'Counted on jokers for pairs',
  'aim-left': 'Left the aim said before the pass',
  'poorer-fit': 'Missed a better pass for another reason',
  'too-many-blind': 'Passed too many tiles blind',
  'too-few-blind': 'Passed too few tiles blind',
  continued: 'Continued where stopping was better',
  stopped: 'Stopped where continuing was better',
  'asked-too-many': 'Asked for too many tiles across',
  'asked-too-few': 'Asked for too few tiles across',
} as const;
export type MistakeCategory = keyof typeof MISTAKE_CATEGORIES;

export const MISTAKE_CATEGORY_NAMES = Object.keys(MISTAKE_CATEGORIES) as readonly MistakeCategory[];

/** What is chosen wrongly in a mistake of this kind: the tiles of a pass, or a number. */
export function choiceOfMistake(kind: MistakeCategory): 'pass' | 'blind' | 'vote' | 'ask' {
  switch (kind) {
    case 'too-many-blind':
    case 'too-few-blind':
      return 'blind';
    case 'continued':
    case 'stopped':
      return 'vote';
    case 'asked-too-many':
    case 'asked-too-few':
      return 'ask';
    default:
      return 'pass';
  }
}
