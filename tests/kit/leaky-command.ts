// A command that has had a child killed, and with the word "leak" leaves open everything that a proof could forget.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createServer } from 'node:net';
import { printLast } from './last-line.ts';

const FOR_EVER = ['-e', 'setInterval(() => {}, 1000)'];

const killed = spawn(process.execPath, FOR_EVER);
killed.kill('SIGKILL');
await once(killed, 'close');

if (process.argv[2] === 'leak') {
  const child = spawn(process.execPath, FOR_EVER, { stdio: 'ignore' });
  process.once('exit', () => child.kill('SIGKILL'));
  setTimeout(() => {}, 3_600_000);
  await once(createServer().listen(0, '127.0.0.1'), 'listening');
}
printLast({ ok: true });
