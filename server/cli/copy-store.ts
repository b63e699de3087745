// npm run --silent copy-store -- --from sqlite:PATH|postgres:URL --to sqlite:PATH|postgres:URL [--add]: moves all rooms.
import { codeOf } from '../store/opened.ts';
import { copyStores } from './copied-stores.ts';

try {
  const outcome = await copyStores(process.argv.slice(2));
  if (outcome.kind === 'rejected') {
    process.stderr.write(`${outcome.message}\n`);
    process.exitCode = 2;
  } else {
    const ok = outcome.report.differing.length === 0;
    process.stdout.write(`${JSON.stringify({ ok, ...outcome.report }, null, 2)}\n`);
    if (!ok) {
      process.stderr.write(
        'Rooms differ: end the servers that use these stores and copy into an empty one.\n',
      );
      process.exitCode = 1;
    }
  }
} catch (error) {
  process.stderr.write(`The copy broke off (${codeOf(error)}); see that both stores can be reached.\n`);
  process.exitCode = 1;
}
