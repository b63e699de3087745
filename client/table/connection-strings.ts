// The state of the connection in words.
import type { ConnectionState } from '../connection/connection.ts';

export interface ConnectionMessage {
  readonly text: string;
  /** A button that helps, where one does. */
  readonly button: string | null;
}

/** Null while all is well. `pendingCount` choices wait to be sent; `seen` is false until a table has come. */
export function connectionMessage(
  state: ConnectionState,
  pendingCount: number,
  seen: boolean,
): ConnectionMessage | null {
  switch (state.kind) {
    case 'open':
      return null;
    case 'read-only':
      return {
        text: 'The server cannot save anything just now. Your tiles are safe. Please wait a moment.',
        button: null,
      };
    case 'connecting':
      return seen ? { text: 'Coming back to the table…', button: null } : null;
    case 'waiting':
      return {
        text:
          pendingCount > 0
            ? 'No connection. We’ll send what you chose when you’re back.'
            : 'No connection. Your tiles are safe. We keep trying.',
        button: 'Try now',
      };
    case 'ended':
      return ENDED[state.reason];
  }
}

const ENDED = {
  replaced: {
    text: 'You’re playing in another tab.',
    button: 'Play here',
  },
  outdated: { text: 'This page is out of date.', button: 'Reload the page' },
  'seat-lost': {
    text: 'Somebody has come back to your seat since. If that was not you, ask the host to free it.',
    button: 'Watch the table',
  },
  'no-room': { text: 'There is no table with this code.', button: 'To the front page' },
} as const;
