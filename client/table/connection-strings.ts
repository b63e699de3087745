// The state of the connection in words.
import type { ConnectionState } from '../connection/connection.ts';

export interface ConnectionMessage {
  readonly text: string;
  /** A button that helps, where one does. */
  readonly button: string | null;
  /** A button that does without the server, where the round can. */
  readonly playOn: string | null;
}

/** Attempts to come back that failed before going on without the server is offered: a short cut mends itself. */
const FAILURES_BEFORE_OFFER = 2;

interface Circumstances {
  /** Choices that wait to be sent. */
  readonly pendingCount: number;
  /** False until a table has come. */
  readonly seen: boolean;
  /** Whether the round may go on in the page. */
  readonly canPlayOn: boolean;
}

/** Null while all is well. */
export function connectionMessage(
  state: ConnectionState,
  { pendingCount, seen, canPlayOn }: Circumstances,
): ConnectionMessage | null {
  switch (state.kind) {
    case 'open':
      return null;
    case 'read-only':
      return {
        text: 'The server cannot save anything just now. Your tiles are safe. Please wait a moment.',
        button: null,
        playOn: null,
      };
    case 'connecting':
      return seen ? { text: 'Coming back to the table…', button: null, playOn: null } : null;
    case 'waiting': {
      const isOffered = canPlayOn && state.failures >= FAILURES_BEFORE_OFFER;
      return {
        text: `${pendingCount > 0 ? WAITING.chosen : WAITING.safe}${isOffered ? WAITING.offer : ''}`,
        button: 'Try now',
        playOn: isOffered ? 'Play on here' : null,
      };
    }
    case 'here':
      return {
        text: state.isServerBack ? HERE.back : HERE.without,
        button: 'Back to the server’s table',
        playOn: null,
      };
    case 'ended':
      // The screen itself says that there is no table with this code.
      if (state.reason === 'no-room' && !seen) return null;
      return { ...ENDED[state.reason], playOn: null };
  }
}

const WAITING = {
  chosen: 'No connection. We’ll send what you chose when you’re back.',
  safe: 'No connection. Your tiles are safe. We keep trying.',
  offer: ' Or play on here: your tiles stay, the others’ are drawn anew.',
} as const;

const HERE = {
  without: 'You play on here without the server. What the others hold was drawn anew.',
  back: 'The server is back. Its table waits for you.',
} as const;

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
