// The server as it is built, in a copy that no other build can change while it runs.
import { cpSync, rmSync } from 'node:fs';
import path from 'node:path';

let built: string | null = null;

/** Path of the program to run; copied once a process. */
export function builtServer(): string {
  built ??= copyOfBuild();
  return built;
}

function copyOfBuild(): string {
  const folder = path.resolve('dist', `proof-${process.pid}`);
  for (const part of ['server', 'shared-engine']) {
    cpSync(path.resolve('dist', part), path.join(folder, part), { recursive: true });
  }
  process.once('exit', () => rmSync(folder, { recursive: true, force: true }));
  return path.join(folder, 'server', 'main.js');
}
