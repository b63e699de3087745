// A folder and server processes for each test of a file, all of them gone afterwards whatever happened.
import path from 'node:path';
import { afterEach, beforeEach } from 'vitest';
import { type ServerProcess, startProcess } from './server-process.ts';
import { temporaryFolder } from './temporary.ts';

export interface ProcessSuite {
  /** Where the rooms of this test may be kept. */
  readonly dataFolder: () => string;
  /** On a durable store unless the environment says otherwise. */
  start(environment: Readonly<Record<string, string>>, program?: readonly string[]): ServerProcess;
}

/** Registers the hooks; call it once at the top of a file. */
export function processSuite(): ProcessSuite {
  let place: Awaited<ReturnType<typeof temporaryFolder>>;
  const running = new Set<ServerProcess>();
  beforeEach(async () => {
    place = await temporaryFolder();
  });
  afterEach(async () => {
    for (const { child } of running) child.kill('SIGKILL');
    await Promise.all([...running].map(({ ended }) => ended));
    running.clear();
    await place.discard();
  });
  return {
    dataFolder: () => path.join(place.folder, 'data'),
    start(environment, program) {
      const server = startProcess({ STORE: '', ...environment }, program);
      running.add(server);
      return server;
    },
  };
}
