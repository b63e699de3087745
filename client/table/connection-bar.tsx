// The state of the connection, in words, where it matters to the player.
import type { LinkState } from '../connection/connection.ts';
import { linkWords } from './connection-strings.ts';

interface LinkBarProps {
  readonly state: LinkState;
  readonly kept: number;
  readonly seen: boolean;
  readonly onButton: () => void;
}

export function LinkBar({ state, kept, seen, onButton }: LinkBarProps) {
  const words = linkWords(state, kept, seen);
  return (
    <div class="link-bar" role="status">
      {words && (
        <div class="link-words">
          <p>{words.text}</p>
          {words.button && (
            <button type="button" onClick={onButton}>
              {words.button}
            </button>
          )}
        </div>
      )}
    </div>
  );
}
