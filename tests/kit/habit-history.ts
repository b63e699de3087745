// A file of rounds by somebody with one habit, for a page that is to name it.
import { historyLines } from '../../shared-engine/practice/history-file.ts';
import type { StoredChoice, StoredRound } from '../../shared-engine/practice/stored-round.ts';
import { historyOf, storedChoice, storedRound } from './stored-rounds.ts';

const DAY = 86_400_000;
const FIRST_DAY = Date.UTC(2099, 0, 1);

/** Ten rounds, long from now: a flower given away in each of them, and once it cost clearly enough to be asked again. */
export function habitRounds(): readonly StoredRound[] {
  return Array.from({ length: 10 }, (_, nth) => habitRound(nth));
}

/** The same as somebody adds them to a page. */
export function habitFile() {
  const text = [...historyLines(historyOf(...habitRounds()))].join('');
  return { name: 'rounds.jsonl', mimeType: 'application/jsonl', buffer: Buffer.from(text) };
}

function habitRound(nth: number): StoredRound {
  const given: StoredChoice = storedChoice({
    step: 'first-across',
    verdict: nth === 0 ? 'costly' : 'a-little-worse',
    loss: 4,
    halfWidth: 0.5,
    mistakes: ['flower-given'],
  });
  const choices = [storedChoice({ verdict: 'best', loss: -1, halfWidth: 0.5 }), given];
  const ledger = { start: 25, close: 20 + nth, choices: -4, halfWidth: 1, standIns: 0, jumps: 0 };
  return storedRound(`a habit ${nth}`, { playedAt: FIRST_DAY + nth * DAY, choices, ledger });
}
