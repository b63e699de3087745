// The state of the connection, in words, above the screen of a room.
import type { ConnectionState } from '../connection/connection.ts';
import { connectionMessage } from './connection-strings.ts';

interface ConnectionBarProps {
  readonly state: ConnectionState;
  readonly pendingCount: number;
  readonly seen: boolean;
  readonly canPlayOn: boolean;
  readonly onButton: () => void;
  readonly onPlayOn: () => void;
}

/** What comes by itself stays at the lower edge and moves nothing; what the player asked for stands above the screen. */
export function ConnectionBar({ state, onButton, onPlayOn, ...circumstances }: ConnectionBarProps) {
  const message = connectionMessage(state, circumstances);
  return (
    <div class={state.kind === 'here' ? 'connection-bar in-place' : 'connection-bar'} role="status">
      {message && (
        <div class="connection-message">
          <p>{message.text}</p>
          {message.playOn && (
            <button type="button" onClick={onPlayOn}>
              {message.playOn}
            </button>
          )}
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
