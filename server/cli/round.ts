// npm run --silent round -- --help says what it takes: four bots play one round.
import { loadSimd } from '../../shared-engine/index.ts';
import { playedRound } from './played-round.ts';
import { asksForHelp, HELP, readRequest } from './round-request.ts';
import { roundText } from './round-text.ts';

const args = process.argv.slice(2);
const request = readRequest(args);
if (asksForHelp(args)) {
  process.stdout.write(HELP);
} else if (request.ok) {
  const { json, deep, ...table } = request;
  const played = playedRound(table, await loadSimd(), deep);
  process.stdout.write(json ? `${JSON.stringify(played, null, 2)}\n` : roundText(played));
} else {
  process.stderr.write(`${request.message}\n`);
  process.exitCode = 2;
}
