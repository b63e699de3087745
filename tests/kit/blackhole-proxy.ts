// A way to another port of the loopback that can fall silent, as a cable does that is pulled out, or lose one answer.
import { type AddressInfo, connect, createServer, type Socket } from 'node:net';

export interface SilentWay {
  readonly port: number;
  /** Answers lost so far. */
  readonly lost: number;
  /** From now on nothing gets through, in either direction, and nobody is told. */
  fallSilent(): void;
  /**
   * The next question with this text in it is passed on, and its connection is cut when the answer comes: what was
   * asked for is done, and whoever asked does not learn it.
   */
  loseAnswerTo(text: string): void;
  close(): Promise<void>;
}

export async function wayTo(target: number): Promise<SilentWay> {
  const ends = new Set<Socket>();
  const doomed = new Set<Socket>();
  let silent = false;
  let lost = 0;
  let wanted: string | null = null;
  const server = createServer((near) => {
    const far = connect(target, '127.0.0.1');
    near.on('data', (bytes) => {
      if (silent) return;
      if (wanted !== null && bytes.includes(wanted)) {
        wanted = null;
        doomed.add(near);
      }
      far.write(bytes);
    });
    far.on('data', (bytes) => {
      if (silent) return;
      if (!doomed.delete(near)) return void near.write(bytes);
      lost++;
      near.destroy();
      far.destroy();
    });
    for (const [from, to] of [
      [near, far],
      [far, near],
    ] as const) {
      ends.add(from);
      from.on('error', () => from.destroy());
      from.on('close', () => {
        ends.delete(from);
        if (!silent) to.destroy();
      });
    }
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  return {
    port: (server.address() as AddressInfo).port,
    get lost() {
      return lost;
    },
    fallSilent() {
      silent = true;
    },
    loseAnswerTo(text) {
      wanted = text;
    },
    close() {
      for (const end of ends) end.destroy();
      return new Promise((resolve) => server.close(() => resolve()));
    },
  };
}
