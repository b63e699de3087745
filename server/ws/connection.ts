// A socket as the rest of the server sees it: messages out, a close code, a heartbeat, and no endless queue.
import { Socket } from 'node:net';
import type { WebSocket } from '@fastify/websocket';
import { CLOSE, HEARTBEAT_MS, PING_MS, type ServerMessage } from '../../shared-engine/index.ts';
import type { Connection } from '../delivery/broadcaster.ts';
import type { Cancel, Clock } from '../ports.ts';

/** Bytes that may wait for a slow reader before its socket is closed. */
const MAX_BUFFERED_BYTES = 64 * 1024;
/** A page sees no ping, so it gets a message as well. */
const HEARTBEAT = JSON.stringify({ kind: 'heartbeat' } satisfies ServerMessage);
const BEATS_A_PING = PING_MS / HEARTBEAT_MS;
/** Time for the peer to answer a close before the socket is cut. */
const CLOSE_TIMEOUT_MS = 2_000;

export function connectionOf(socket: WebSocket, clock: Clock): Connection {
  let cancel: Cancel = () => {};
  let hasAnswered = true;
  let beats = 0;

  function beat(): void {
    beats = (beats + 1) % BEATS_A_PING;
    if (beats === 0) {
      if (!hasAnswered) {
        socket.terminate();
        return;
      }
      // A peer that is silent until the next ping is gone.
      hasAnswered = false;
      socket.ping();
    }
    socket.send(HEARTBEAT);
    cancel = clock.after(HEARTBEAT_MS, beat);
  }

  function end(code: number, reason?: string): void {
    cancel();
    socket.close(code, reason);
    cancel = clock.after(CLOSE_TIMEOUT_MS, () => socket.terminate());
  }

  socket.on('pong', () => {
    hasAnswered = true;
  });
  socket.on('close', () => cancel());
  cancel = clock.after(HEARTBEAT_MS, beat);

  function sendText(text: string): void {
    if (socket.readyState !== socket.OPEN) return;
    if (socket.bufferedAmount > MAX_BUFFERED_BYTES) {
      end(CLOSE.tooSlow);
      return;
    }
    corkUntilTurnEnds(socket);
    socket.send(text);
  }

  return { send: (message: ServerMessage) => sendText(JSON.stringify(message)), sendText, end };
}

/** What one turn of the event loop says to a peer goes out in one write. */
function corkUntilTurnEnds(socket: WebSocket): void {
  const wire = '_socket' in socket ? socket._socket : null;
  if (!(wire instanceof Socket) || wire.writableCorked > 0) return;
  wire.cork();
  process.nextTick(() => wire.uncork());
}
