// The state of the connection, in words, above the screen of a room.
import type { ConnectionState } from '../connection/connection.ts';
import { connectionMessage } from './connection-strings.ts';

interface ConnectionBarProps {
  readonly state: ConnectionState;
  readonly pendingCount: number;
  readonly seen: boolean;
  readonly onButton: () => void;
}

export function ConnectionBar({ state, pendingCount, seen, onButton }: ConnectionBarProps) {
  const message = connectionMessage(state, pendingCount, seen);
  return (
    <div class="connection-bar" role="status">
      {message && (
        <div class="connection-message">
          <p>{message.text}</p>
          {message.button && (
            <button type="button" onClick={onButton}>
              {message.button}
            </button>
          )}
        </div>
      )}
    </div>
  );
}
