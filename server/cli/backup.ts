// npm run --silent backup -- FILE: copies the SQLite file of DATA_DIR while the server runs.
import { readConfig } from '../config.ts';
import { backupFile } from '../store/sqlite-backup.ts';

const [target, ...more] = process.argv.slice(2);
const read = readConfig(process.env);
if (target === undefined || more.length > 0) {
  end('Name the one file to write: npm run --silent backup -- FILE', 2);
} else if (!read.ok) {
  end(`These settings cannot be used:\n  ${read.problems.join('\n  ')}`, 2);
} else if (read.config.storage.kind !== 'sqlite') {
  end('Only the SQLite file is backed up so; back a PostgreSQL database up with its own tools.', 2);
} else {
  const outcome = backupFile(read.config.storage.location, target);
  if (outcome.ok) process.stdout.write(`${JSON.stringify({ file: target, ...outcome }, null, 2)}\n`);
  else end(outcome.message, 1);
}

function end(message: string, code: number): void {
  process.stderr.write(`${message}\n`);
  process.exitCode = code;
}
