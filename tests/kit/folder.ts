// A folder of a test's own below the system's temporary one.
import { mkdtemp, rm } from 'node:fs/promises';
import os from 'node:os';
import path from 'node:path';

export async function temporaryFolder(): Promise<{ readonly folder: string; discard(): Promise<void> }> {
  const folder = await mkdtemp(path.join(os.tmpdir(), 'quadrille-'));
  return { folder, discard: () => rm(folder, { recursive: true, force: true }) };
}
