// The state of the connection, in words, where it matters to the player.
import type { ConnectionState } from '../connection/connection.ts';
import { connectionMessage } from './connection-strings.ts';

interface ConnectionBarProps {
  readonly state: ConnectionState;
  readonly kept: number;
  readonly seen: boolean;
  readonly onButton: () => void;
}

export function ConnectionBar({ state, kept, seen, onButton }: ConnectionBarProps) {
  const words = connectionMessage(state, kept, seen);
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
