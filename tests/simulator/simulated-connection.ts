// A socket between a person and a server as two queues: frames in order, delays, cuts, and silence that nobody notices.
import type { OpenWire, WireEvents } from '../../client/connection/wire.ts';
import type { Line } from '../../server/room/table.ts';
import { HEARTBEAT_MS, type Random, type ServerMessage } from '../../shared-engine/index.ts';
import type { VirtualTime } from './virtual-time.ts';

export interface FarEnd {
  receive(frame: Uint8Array): void;
  closed(): void;
}

export interface SimulatedLine {
  readonly line: Line;
  readonly wire: ReturnType<OpenWire>;
  /** Gone, and both ends notice. */
  cut(): void;
  /** Nothing gets through any more, and nobody is told. */
  fallSilent(): void;
  /** The server's machine is gone: only the person notices. */
  serverDied(): void;
}

export interface LinePorts {
  readonly time: VirtualTime;
  readonly random: Random;
  /** The longest time a frame takes, in milliseconds. */
  readonly slow: () => number;
  /** In a hundred frames of the person, how many arrive twice. */
  readonly twice: () => number;
  readonly ended: () => void;
}

export function simulatedLine(
  ports: LinePorts,
  events: WireEvents,
  connectTo: (line: Line) => FarEnd | null,
): SimulatedLine {
  const { time, random } = ports;
  const state = { open: true, silent: false, serverGone: false, toServer: 0, toPerson: 0 };

  /** Frames of one direction overtake one another never. */
  function inOrder(way: 'toServer' | 'toPerson', run: () => void): void {
    state[way] = Math.max(state[way], time.now + 1 + random.below(ports.slow()));
    time.after(state[way] - time.now, run);
  }

  function tell(message: ServerMessage): void {
    const text = JSON.stringify(message);
    if (!state.silent) inOrder('toPerson', () => state.open && !state.silent && events.text(text));
  }

  function close(code: number, reason: string): void {
    if (!state.open) return;
    inOrder('toPerson', () => {
      if (!state.open) return;
      state.open = false;
      if (!state.silent) events.closed(code, reason);
      if (!state.serverGone) far?.closed();
      ports.ended();
    });
  }

  function beat(): void {
    if (!state.open || state.serverGone) return;
    tell({ kind: 'alive' });
    time.after(HEARTBEAT_MS, beat);
  }

  const line: Line = { send: tell, end: (code, reason = '') => close(code, reason) };
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
        const times = random.below(100) < ports.twice() ? 2 : 1;
        for (let time = 0; time < times; time++) {
          inOrder('toServer', () => state.open && !state.silent && !state.serverGone && far?.receive(frame));
        }
      },
      close() {
        if (!state.open) return;
        state.open = false;
        ports.ended();
        // The other end hears of it, or finds out when its heartbeat stays unanswered.
        time.after(state.silent ? HEARTBEAT_MS : 1 + random.below(ports.slow()), () => {
          if (!state.serverGone) far?.closed();
        });
      },
    },
    cut: () => close(1006, ''),
    fallSilent() {
      state.silent = true;
      time.after(2 * HEARTBEAT_MS, () => close(1006, ''));
    },
    serverDied() {
      state.serverGone = true;
      close(1006, '');
    },
  };
}
