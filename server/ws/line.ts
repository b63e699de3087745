// A socket as the rest of the server sees it: messages out, a close code, a heartbeat, and no endless queue.
import { Socket } from 'node:net';
import type { WebSocket } from '@fastify/websocket';
import { CLOSE, HEARTBEAT_MS, type ServerMessage } from '../../shared-engine/index.ts';
import type { Clock, Undo } from '../ports.ts';
import type { Line } from '../room/table.ts';

/** Bytes that may wait for a slow reader before it is cut off. */
const MOST_WAITING = 64 * 1024;
/** A page sees no ping, so it gets a message as well. */
const ALIVE = JSON.stringify({ kind: 'alive' } satisfies ServerMessage);
/** Time for the peer to answer a close before the line is cut. */
const GOODBYE_MS = 2_000;

export function lineOf(socket: WebSocket, clock: Clock): Line {
  let callOff: Undo = () => {};
  let answered = true;

  function beat(): void {
    if (!answered) {
      socket.terminate();
      return;
    }
    // A peer that is silent until the next beat is gone.
    answered = false;
    socket.ping();
    socket.send(ALIVE);
    callOff = clock.after(HEARTBEAT_MS, beat);
  }

  function end(code: number, reason?: string): void {
    callOff();
    socket.close(code, reason);
    callOff = clock.after(GOODBYE_MS, () => socket.terminate());
  }

  socket.on('pong', () => {
    answered = true;
  });
  socket.on('close', () => callOff());
  callOff = clock.after(HEARTBEAT_MS, beat);

  return {
    send(message: ServerMessage, text = JSON.stringify(message)) {
      if (socket.readyState !== socket.OPEN) return;
      if (socket.bufferedAmount > MOST_WAITING) return end(CLOSE.tooSlow);
      together(socket);
      socket.send(text);
    },
    end,
  };
}

/** What one turn of the event loop says to a peer goes out in one write. */
function together(socket: WebSocket): void {
  const wire = '_socket' in socket ? socket._socket : null;
  if (!(wire instanceof Socket) || wire.writableCorked > 0) return;
  wire.cork();
  process.nextTick(() => wire.uncork());
}
