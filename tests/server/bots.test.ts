// Bots behind their port: a broken one costs its table a choice, never the round.
import { describe, expect, test } from 'vitest';
import { createLog } from '../../server/log.ts';
import { playingCard } from '../../server/playing-card.ts';
import { botsInProcess, type Choose, simplestLegal } from '../../server/workers/bots.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { decide } from '../../shared-engine/rules/exchange/decide.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { type SeatView, seatView } from '../../shared-engine/rules/view/view.ts';
import { apply, opened, playOn, seatsToAct } from '../kit/rounds.ts';

const card = playingCard({ kind: 'house' });

function withBot(choose?: Choose) {
  const lines: string[] = [];
  const log = createLog('info', { write: (line) => void lines.push(line) });
  return { bots: botsInProcess(log, choose), lines };
}

function firstView(name: string): SeatView {
  return seatView(opened(name).round, 0);
}

describe('a bot that', () => {
  const broken: readonly [string, Choose][] = [
    [
      'throws',
      (_, view) => {
        throw new Error(`cannot think of ${view.rack.join()}`);
      },
    ],
    ['says nothing', () => null],
    ['passes tiles it has not', () => ({ kind: 'pass', step: 'first-right', tiles: missing(3), blind: 0 })],
    [
      'passes a joker',
      () => ({ kind: 'pass', step: 'first-right', tiles: ['joker', 'joker', 'joker'], blind: 0 }),
    ],
    [
      'answers another step',
      (_, view) => ({ kind: 'pass', step: 'first-left', tiles: view.rack.slice(0, 3), blind: 0 }),
    ],
    ['votes in a pass', () => ({ kind: 'vote', step: 'vote', go: true })],
    ['asks in a pass', () => ({ kind: 'ask', step: 'courtesy-ask', count: 3 })],
  ];
  test.each(broken)(
    '%s is replaced by the simplest legal choice, and the log does not tell its tiles',
    async (_, choose) => {
      const { bots, lines } = withBot(choose);
      const view = firstView('broken');
      const choice = await bots.choose({
        style: 'strong',
        view,
        card,
        seed: '0'.repeat(64),
        fairnessKey: 'room',
      });
      expect(choice).toEqual(simplestLegal(view));
      expect(lines).toHaveLength(1);
      expect(view.rack.filter((face) => lines[0]!.includes(face))).toEqual([]);
    },
  );

  test('SC3 asks for a number that does not exist is replaced likewise', async () => {
    const atNumbers = playOn(opened('numbers'), stream('numbers', 'play'), ({ phase }) => phase === 'asking');
    const { bots } = withBot(() => ({ kind: 'ask', step: 'courtesy-ask', count: 7 }));
    const view = seatView(atNumbers.round, 1);
    expect(
      await bots.choose({ style: 'casual', view, card, seed: '0'.repeat(64), fairnessKey: 'room' }),
    ).toEqual(simplestLegal(view));
  });

  test('chooses legally is taken at its word, and the log says nothing', async () => {
    const { bots, lines } = withBot();
    const view = firstView('sound');
    const request = { style: 'strong', view, card, seed: '0'.repeat(64), fairnessKey: 'room' } as const;
    const choice = await bots.choose(request);
    expect(choice).toEqual(await bots.choose(request));
    expect(choice.kind).toBe('pass');
    expect(lines).toEqual([]);
  });
});

test('the simplest choice is legal at every step of many rounds', () => {
  for (let n = 0; n < 40; n++) {
    let played = opened(`simplest ${n}`, 0);
    const random = stream(`simplest ${n}`, 'order');
    while (played.round.phase !== 'closed') {
      const waiting = seatsToAct(played.round);
      const seat = waiting[random.below(waiting.length)]!;
      const command = { ...simplestLegal(seatView(played.round, seat)), seat, by: 'stand-in' } as const;
      expect(decide(played.round, command)).toMatchObject({ ok: true });
      played = apply(played, command);
    }
  }
});

/** More copies of one face than the set has. */
function missing(count: number): Face[] {
  return new Array<Face>(count).fill('white');
}
