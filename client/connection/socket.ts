// The socket and the timer that a connection uses, and the browser's own.
import { socketPath } from '../../shared-engine/index.ts';

export interface ClientSocket {
  send(text: string): void;
  close(): void;
}

export interface SocketEvents {
  opened(): void;
  text(data: string): void;
  /** `reason` as the server gave it. */
  closed(code: number, reason?: string): void;
}

export type OpenSocket = (events: SocketEvents) => ClientSocket;

export type Cancel = () => void;

/** Runs `run` after `ms` milliseconds, unless it is canceled before. */
export type StartTimer = (ms: number, run: () => void) => Cancel;

export function browserSocket(url: string): OpenSocket {
  return (events) => {
    const socket = new WebSocket(url);
    socket.addEventListener('open', () => events.opened());
    socket.addEventListener('message', ({ data }) => {
      if (typeof data === 'string') events.text(data);
    });
    socket.addEventListener('close', ({ code, reason }) => events.closed(code, reason));
    return { send: (text) => socket.send(text), close: () => socket.close(1000) };
  };
}

/** Where the socket of this room is on the host that served this page. */
export function socketUrl(
  { protocol, host }: { readonly protocol: string; readonly host: string },
  code: string,
): string {
  return `${protocol === 'https:' ? 'wss' : 'ws'}://${host}${socketPath(code)}`;
}

export const browserTimer: StartTimer = (ms, run) => {
  const timer = setTimeout(run, ms);
  return () => clearTimeout(timer);
};
