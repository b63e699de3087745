// npm run --silent round -- [--seed HEX] [--card house|FILE] [--seats A,B,C,D] [--dealer 0–3] [--deep] [--json]: four bots play one round.
import { loadSimd } from '../../shared-engine/index.ts';
import { playedRound } from './played-round.ts';
import { readRequest } from './round-request.ts';
import { roundText } from './round-text.ts';

const request = readRequest(process.argv.slice(2));
if (request.ok) {
  const { json, deep, ...table } = request;
  const played = playedRound(table, await loadSimd(), deep);
  process.stdout.write(json ? `${JSON.stringify(played, null, 2)}\n` : roundText(played));
} else {
  process.stderr.write(`${request.message}\n`);
  process.exitCode = 2;
}
