// What a test takes from the machine for a while: a folder of its own, a free port of the loopback.
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import os from 'node:os';
import path from 'node:path';

/** Below the system's temporary folder. */
export async function temporaryFolder(): Promise<{ readonly folder: string; discard(): Promise<void> }> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'quadrille-'));
  return { folder, discard: () => rm(folder, { recursive: true, force: true }) };
}

/** For programs that must be told their port; another process may take it first. */
export function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      const port = typeof address === 'object' && address !== null ? address.port : 0;
      probe.close(() => resolve(port));
    });
  });
}
