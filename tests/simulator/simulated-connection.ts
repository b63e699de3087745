// A simulated socket between a person and a server: two ordered queues with delays, cuts, and silence that neither end notices.
import type { OpenSocket, SocketEvents } from '../../client/connection/socket.ts';
import type { Connection } from '../../server/delivery/broadcaster.ts';
import type { ServerMessage } from '../../shared-engine/protocol/messages.ts';
import { HEARTBEAT_MS, PING_MS } from '../../shared-engine/protocol/version.ts';
import type { Random } from '../../shared-engine/rules/deal/random.ts';
import type { VirtualTime } from './virtual-time.ts';

export interface ServerEnd {
  receive(frame: Uint8Array): void;
  closed(): void;
}

export interface SimulatedConnection {
  readonly line: Connection;
  readonly wire: ReturnType<OpenSocket>;
  /** Closes it, and both ends notice. */
  cut(): void;
  /** Nothing gets through any more, and neither end notices at first. */
  goSilent(): void;
  /** The server is gone: only the person notices. */
  serverDied(): void;
}

export interface ConnectionPorts {
  readonly time: VirtualTime;
  readonly random: Random;
  /** The longest time a frame takes, in milliseconds. */
  readonly maxDelayMs: () => number;
  /** In a hundred frames of the person, how many arrive twice. */
  readonly duplicatePercent: () => number;
  readonly onEnded: () => void;
}

export function simulatedConnection(
  ports: ConnectionPorts,
  events: SocketEvents,
  connectTo: (line: Connection) => ServerEnd | null,
): SimulatedConnection {
  const { time, random } = ports;
  const state = { open: true, silent: false, serverGone: false, toServer: 0, toPerson: 0 };

  /** Frames of one direction never overtake one another. */
  function inOrder(way: 'toServer' | 'toPerson', run: () => void): void {
    state[way] = Math.max(state[way], time.now + 1 + random.below(ports.maxDelayMs()));
    time.after(state[way] - time.now, run);
  }

  function tell(message: ServerMessage): void {
    tellText(JSON.stringify(message));
  }

  function tellText(text: string): void {
    if (!state.silent) inOrder('toPerson', () => state.open && !state.silent && events.text(text));
  }

  function close(code: number, reason: string): void {
    if (!state.open) return;
    inOrder('toPerson', () => {
      if (!state.open) return;
      state.open = false;
      if (!state.silent) events.closed(code, reason);
      if (!state.serverGone) far?.closed();
      ports.onEnded();
    });
  }

  function beat(): void {
    if (!state.open || state.serverGone) return;
    tell({ kind: 'heartbeat' });
    time.after(HEARTBEAT_MS, beat);
  }

  const line: Connection = {
    send: tell,
    sendText: tellText,
    end: (code, reason = '') => close(code, reason),
  };
  const far = connectTo(line);
  if (far === null) {
    state.serverGone = true;
    close(1006, '');
  } else {
    inOrder('toPerson', () => state.open && !state.silent && events.opened());
    time.after(HEARTBEAT_MS, beat);
  }

  return {
    line,
    wire: {
      send(text) {
        const frame = new TextEncoder().encode(text);
        const times = random.below(100) < ports.duplicatePercent() ? 2 : 1;
        for (let time = 0; time < times; time++) {
          inOrder('toServer', () => state.open && !state.silent && !state.serverGone && far?.receive(frame));
        }
      },
      close() {
        if (!state.open) return;
        state.open = false;
        ports.onEnded();
        // The other end hears of it, or finds out when its heartbeat stays unanswered.
        time.after(state.silent ? PING_MS : 1 + random.below(ports.maxDelayMs()), () => {
          if (!state.serverGone) far?.closed();
        });
      },
    },
    cut: () => close(1006, ''),
    goSilent() {
      state.silent = true;
      time.after(2 * PING_MS, () => close(1006, ''));
    },
    serverDied() {
      state.serverGone = true;
      close(1006, '');
    },
  };
}
