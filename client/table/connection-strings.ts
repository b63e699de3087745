// The state of the connection in words.
import type { ConnectionState } from '../connection/connection.ts';

export interface ConnectionMessage {
  readonly text: string;
  /** A button that helps, where one does. */
  readonly button: string | null;
}

/** Null while there is nothing worth saying. `kept` counts choices that wait for the line. */
export function connectionMessage(
  state: ConnectionState,
  kept: number,
  seen: boolean,
): ConnectionMessage | null {
  switch (state.kind) {
    case 'open':
      return null;
    case 'looking':
      return {
        text: 'The table cannot write anything down just now. Your tiles are safe; wait a moment.',
        button: null,
      };
    case 'connecting':
      return seen ? { text: 'Coming back to the table…', button: null } : null;
    case 'waiting':
      return {
        text:
          kept > 0
            ? 'The line is down. Your choice is kept here and goes out once, as soon as the line is back.'
            : 'The line is down. Your tiles are safe at the table; trying again by itself.',
        button: 'Try now',
      };
    case 'ended':
      return ENDED[state.reason];
  }
}

const ENDED = {
  replaced: {
    text: 'You opened this seat on another page or device; this one has let go.',
    button: 'Play here',
  },
  outdated: { text: 'The table speaks a newer version than this page.', button: 'Reload the page' },
  'no-room': { text: 'There is no open table with this code.', button: 'To the front page' },
} as const;
