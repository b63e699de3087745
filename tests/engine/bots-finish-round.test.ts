// Four choosers finish a round: the same log from the same seed, and an error for a chooser with a mistake.
import { describe, expect, it } from 'vitest';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { botRandom, type Chooser, finishRound } from '../../shared-engine/bots/finish-round.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import { STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { randomCard } from '../kit/random-card.ts';
import { opened, playOn } from '../kit/rounds.ts';

const kernel = createSwarKernel(randomCard('play-out', 20, 4));
const four: Chooser = (view, random) =>
  chooseFor((['strong', 'casual', 'guarded', 'random'] as const)[view.record.seat], view, kernel, random);

describe('a round finished by four choosers', () => {
  it('is closed, keeps every rack its size, and its log replays to it (E2)', () => {
    for (let index = 0; index < 15; index++) {
      const { round: first, log } = opened(`whole ${index}`, SEATS[index % 4]!);
      const { round, events } = finishRound(first, four);
      expect(round.phase).toBe('closed');
      expect(round.racks.map(sizeOf)).toEqual(first.racks.map(sizeOf));
      expect(replay([...log, ...events])).toEqual(round);
    }
  });

  it('is the same for the same seed, and different for another seed', () => {
    const logOf = (name: string) => JSON.stringify(finishRound(opened(name).round, four).events);
    expect(logOf('one')).toBe(logOf('one'));
    expect(logOf('one')).not.toBe(logOf('two'));
  });

  it('goes on from the middle of a step, leaving answers given as they are', () => {
    const begun = playOn(opened('middle'), stream('middle', 'x'), ({ phase }) => phase === 'voting');
    const voted: RoundEvent = { kind: 'voted', seat: 2, go: false, by: 'player' };
    const half = replay([...begun.log, voted]);
    if (half === null) throw new Error('the log opens with a deal');
    const { round, events } = finishRound(half, four);
    expect(events.filter((event) => event.kind === 'voted').map(({ seat }) => seat)).toEqual([0, 1, 3]);
    expect(round.resolved.find((step) => step.kind === 'vote')?.by).toEqual(['bot', 'bot', 'player', 'bot']);
  });

  it('gives each chooser the random numbers of its own step and seat', () => {
    const seen = new Set<string>();
    const { round } = opened('streams');
    finishRound(round, (view, random) => {
      const step = stepOf(view.stage);
      if (step === null) throw new Error('asked after the close');
      const { seat } = view.record;
      const draw = random.below(1e9);
      expect(draw).toBe(stream(round.deal.seed, `bot/${step}/${seat}`).below(1e9));
      expect(draw).toBe(botRandom(round.deal.seed, step, seat).below(1e9));
      seen.add(`${step} ${seat}`);
      return four(view, random);
    });
    expect(seen.size).toBeGreaterThanOrEqual(20);
  });

  it('throws for a chooser that answers illegally or never answers', () => {
    const { round } = opened('mistakes');
    expect(() => finishRound(round, () => ({ kind: 'vote', step: 'vote', go: true }))).toThrow(/first-right/);
    expect(() => finishRound(round, () => null)).toThrow(/No chooser answered/);
  });
});

describe('the open step', () => {
  it('is named at each step of a round and null after the close', () => {
    const names = new Set<string | null>();
    const random = stream('steps', 'x');
    for (let index = 0; index < 20; index++) {
      let played = opened(`steps ${index}`);
      while (played.round.phase !== 'closed') {
        names.add(stepOf(played.round));
        let more = 1;
        played = playOn(played, random, () => more-- <= 0);
      }
      expect(stepOf(played.round)).toBeNull();
    }
    expect([...names].sort()).toEqual([...STEPS].sort());
  });
});
