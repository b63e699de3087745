// The ground of the attacks: built servers as processes of their own, each with its files, all gone when the siege is over.
import path from 'node:path';
import { startProcess } from '../../kit/server-process.ts';
import { temporaryFolder } from '../../kit/temporary.ts';
import type { ProofInput } from '../faults/scenario.ts';
import type { Finding } from './finding.ts';

export interface Besieged {
  readonly url: string;
  readonly pid: number;
  /** Where its SQLite file is. */
  readonly dataFolder: string;
  /** All it wrote to standard error so far. */
  readonly stderr: () => string;
}

export interface Siege extends ProofInput {
  /** A server without limits on one address or socket, which the attacks share. */
  readonly server: Besieged;
  /** Another server; ended with the siege. */
  start(settings?: Readonly<Record<string, string>>): Promise<Besieged>;
  /** A new folder; deleted with the siege. */
  folder(): Promise<string>;
}

/** One part of the list of attacks; it throws where even the honest people in it get nowhere. */
export type Attack = (siege: Siege) => Promise<readonly Finding[]>;

export const UNLIMITED = {
  REQUESTS_PER_MINUTE: '0',
  ROOMS_PER_MINUTE: '0',
  SOCKETS_PER_IP: '0',
  MESSAGES_PER_SECOND: '1000000',
} as const;

/** Bots that do not pause and quick reviews: nothing here is about either. */
const SETTINGS = { STORE: '', BOT_DELAY_MS: '0', REVIEW_DEPTH: 'quick', REVIEW_WORKERS: '0' } as const;

/** Runs `attack` on a server of its own and ends everything that it has started, whatever happens. */
export async function besiege<T>(input: ProofInput, attack: (siege: Siege) => Promise<T>): Promise<T> {
  const endings: (() => Promise<unknown>)[] = [];
  const folder = async () => {
    const made = await temporaryFolder();
    endings.unshift(made.discard);
    return made.folder;
  };
  const start = async (settings: Readonly<Record<string, string>> = {}): Promise<Besieged> => {
    const dataFolder = settings.DATA_DIR ?? path.join(await folder(), 'data');
    const { child, url, stderr, ended } = startProcess({ ...SETTINGS, ...settings, DATA_DIR: dataFolder });
    endings.push(() => {
      child.kill('SIGKILL');
      return ended;
    });
    return { url: await url, pid: child.pid ?? 0, dataFolder, stderr };
  };
  try {
    return await attack({ ...input, server: await start(UNLIMITED), start, folder });
  } finally {
    // Servers first, then the folders that they write to.
    for (const end of endings.reverse()) await end();
  }
}

/** Makes the rows of one part. */
export function findingsOf(part: string) {
  return (what: string, bar: string, found: unknown, holds: boolean): Finding => {
    const text = typeof found === 'string' ? found : JSON.stringify(found);
    return { part, what, bar, found: text, holds };
  };
}
