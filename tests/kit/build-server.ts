// Before the first test: the built server is that of the source, also where somebody runs one file of tests by hand.
import { spawnSync } from 'node:child_process';
import path from 'node:path';

export default function buildServer(): void {
  const root = path.resolve(import.meta.dirname, '../..');
  const compiler = path.join(root, 'node_modules', '.bin', 'tsc');
  const { status, stdout } = spawnSync(compiler, ['-b', '--pretty', 'false'], {
    cwd: root,
    encoding: 'utf8',
  });
  if (status !== 0) throw new Error(`The server does not build, so that no test can run it:\n${stdout}`);
}
