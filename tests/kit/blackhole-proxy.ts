// A way to another port of the loopback that can fall silent, as a cable does that is pulled out.
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';

export interface SilentWay {
  readonly port: number;
  /** From now on nothing gets through, in either direction, and nobody is told. */
  fallSilent(): void;
  close(): Promise<void>;
}

export async function wayTo(target: number): Promise<SilentWay> {
  const ends = new Set<Socket>();
  let silent = false;
  const server = createServer((near) => {
    const far = connect(target, '127.0.0.1');
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const) {
      ends.add(from);
      from.on('data', (bytes) => silent || to.write(bytes));
      from.on('error', () => from.destroy());
      from.on('close', () => silent || to.destroy());
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: (server.address() as AddressInfo).port,
    fallSilent() {
      silent = true;
    },
    close() {
      for (const end of ends) end.destroy();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}
