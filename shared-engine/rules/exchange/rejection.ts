// Why a command changes nothing: one code each, with a message for the person who sent it (rule E1).

export const ROUND_REJECTIONS = {
  'wrong-step': 'The table has moved on. Look at it and choose again.',
  'round-closed': 'This round is over. Start the next deal.',
  'wrong-count': 'Choose the number of tiles that this pass needs.',
  'joker-in-pass': 'Jokers can’t be passed. Choose another tile.',
  'tile-not-held': 'You don’t hold one of those tiles. Choose from your own rack.',
  'blind-not-allowed': 'You can’t pass blind at this step. Choose every tile from your rack.',
  'already-answered': 'You have already answered. Take your pass back first to change it.',
  'nothing-to-withdraw': 'You have no pass to take back.',
  'nothing-to-give': 'You agreed on no tiles, so you have nothing to pass.',
  'bad-number': 'Ask for 0, 1, 2 or 3 tiles.',
  'not-four-players': 'Four seats play here; let bots take the seats that nobody else takes.',
  'blank-tiles': 'The set here has 152 tiles and no blank ones; play without them.',
  'pot-for-courtesy': 'There is no pot here; choose a courtesy pass by asking, or none.',
  'east-not-in-turn':
    'Where friends play, East goes in turn; choose another East at a table alone with bots.',
} as const;

export type RoundRejectionCode = keyof typeof ROUND_REJECTIONS;

export interface RoundRejection {
  readonly ok: false;
  readonly code: RoundRejectionCode;
  readonly message: string;
}

export const ROUND_REJECTION_CODES = Object.keys(ROUND_REJECTIONS) as readonly RoundRejectionCode[];

export function reject(code: RoundRejectionCode): RoundRejection {
  return { ok: false, code, message: ROUND_REJECTIONS[code] };
}

/** `missing` is how many tiles more the pass needs, below 0 where it has too many. */
export function rejectCount(missing: number): RoundRejection {
  const rejection = reject('wrong-count');
  if (!Number.isInteger(missing) || missing === 0) return rejection;
  const number = Math.abs(missing) === 1 ? 'one' : Math.abs(missing);
  const tiles = Math.abs(missing) === 1 ? 'tile' : 'tiles';
  const message = missing > 0 ? `Choose ${number} more ${tiles}.` : `Take ${number} ${tiles} back.`;
  return { ...rejection, message };
}
