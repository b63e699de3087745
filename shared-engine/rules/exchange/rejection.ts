// Why a command changes nothing: one code and one sentence each (rule E1).

const MESSAGES = {
  'wrong-step': 'The table is at another step now; look at the table and choose again.',
  'round-closed': 'This round is closed; start the next deal.',
  'wrong-count': 'That is not the number of tiles this pass needs; choose the number shown beside the tray.',
  'joker-in-pass': 'A joker may not be passed; choose another tile.',
  'tile-not-held': 'One of those tiles is not on your rack; choose from your own tiles.',
  'blind-not-allowed': 'This pass cannot be made blind; choose all its tiles from your rack.',
  'already-answered': 'You have answered this step; take your pass back first if you want to change it.',
  'nothing-to-withdraw': 'You have no sealed pass to take back.',
  'nothing-to-give': 'You agreed on no tiles across, so there is nothing to pass.',
  'bad-number': 'Ask for 0, 1, 2 or 3 tiles.',
} as const;

export type RoundRejectionCode = keyof typeof MESSAGES;

export interface RoundRejection {
  readonly ok: false;
  readonly code: RoundRejectionCode;
  readonly message: string;
}

export const ROUND_REJECTION_CODES = Object.keys(MESSAGES) as readonly RoundRejectionCode[];

export function reject(code: RoundRejectionCode): RoundRejection {
  return { ok: false, code, message: MESSAGES[code] };
}
