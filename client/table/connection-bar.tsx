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

/**
 * What comes by itself stays at the lower edge and moves nothing; what the player asked for stands above the screen, and so
 * does everything while there is no table yet.
 */
export function ConnectionBar({ state, onButton, onPlayOn, ...circumstances }: ConnectionBarProps) {
  const message = connectionMessage(state, circumstances);
  const place = state.kind === 'here' ? 'above subdued' : circumstances.seen ? 'below' : 'above';
  return (
    <div class={`connection-bar ${place}`} role="status">
      {message && (
        <div class="connection-message">
          <p>{message.text}</p>
          {message.playOn && (
            <button type="button" onClick={onPlayOn}>
              {message.playOn}
            </button>
          )}
          {message.button && (
            <button
              type="button"
              class={state.kind === 'here' && state.isServerBack ? 'primary' : ''}
              onClick={onButton}
            >
              {message.button}
            </button>
          )}
        </div>
      )}
    </div>
  );
}
