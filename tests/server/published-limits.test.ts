// What a published drill takes: every budget reached in the pure functions, as quickly as they decide.
import { expect, test } from 'vitest';
import { recordedIn } from '../../server/aggregate/recorded.ts';
import { decidePublished, type PublishedCommand } from '../../server/published/decide.ts';
import type { PublishedEvent } from '../../server/published/event.ts';
import { beginPublished, evolvePublished } from '../../server/published/evolve.ts';
import { PUBLISHED } from '../../server/published/published.ts';
import { type PublishedState, roundsOf } from '../../server/published/state.ts';
import { publishedEvents } from '../../server/published/stored-event.ts';
import { hashSecret } from '../../server/secrets.ts';
import { PUBLISHED_LIMITS } from '../../shared-engine/protocol/published.ts';
import { forFour } from '../../shared-engine/rules/deal/seat.ts';
import { DAY_MS, quickDrill } from '../kit/published.ts';
import { seedNamed } from '../kit/rounds.ts';

function published(deals = 1): PublishedState {
  const drill = quickDrill(deals);
  const prepared = forFour(() => ['bam-1', 'dot-4', 'west'] as const);
  const event: PublishedEvent = {
    kind: 'published',
    drill,
    deals: drill.deals.map(() => ({ seed: seedNamed('limits'), dealer: 1, prepared })),
    terms: { compare: 'at-once', names: false, cardClosed: false },
    until: DAY_MS,
    card: { kind: 'house' },
    secretHash: hashSecret('teacher'),
  };
  return beginPublished({ seq: 1, at: 0, event })!;
}

const PASSES = ['bam-1 dot-4 west', 'bam-1 dot-4 north', 'dot-4 west north', 'bam-1 west north'];
const round = (n: number, more: Partial<PublishedCommand & { kind: 'count' }> = {}): PublishedCommand => ({
  kind: 'count',
  player: n.toString(16).padStart(6, '0').split('').toReversed().join('').padEnd(32, '0'),
  id: `round-${n}`,
  deal: 0,
  choices: { 'first-right': PASSES[n % 4]!, vote: String(n % 2) },
  questions: [],
  name: null,
  ...more,
});

function submit(
  state: PublishedState,
  command: PublishedCommand,
  events: PublishedEvent[] = [],
): PublishedState {
  const decision = decidePublished(state, command, 1);
  if (!decision.ok) throw new Error(decision.code);
  events.push(...decision.events);
  return decision.events.reduce(
    (now, event) => evolvePublished(now, { seq: now.seq + 1, at: 1, event }),
    state,
  );
}

test('PD9 a drill counts so many rounds and no more, and its log and state are as small as that', () => {
  const last = 1000;
  let state: PublishedState = { ...published(), rounds: PUBLISHED_LIMITS.rounds - last };
  const events: PublishedEvent[] = [];
  for (let n = 0; n < last; n++) state = submit(state, round(n), events);
  expect(decidePublished(state, round(PUBLISHED_LIMITS.rounds), 1)).toMatchObject({ code: 'drill-full' });
  // Who is counted already hears so, not that the drill is full.
  expect(decidePublished(state, round(7), 1)).toEqual({ ok: true, events: [] });
  expect(roundsOf(state, (round(7) as { player: string }).player)).toEqual({ 0: 'round-7' });
  const counts = Object.values(state.byDeal[0]!.told['first-right']!);
  expect(counts).toEqual([250, 250, 250, 250]);
  expect(publishedEvents.textOf(events).length / last).toBeLessThan(400);
  expect(PUBLISHED.snapshotOf(state)!.length / last).toBeLessThan(100);
});

test('PD9 a drill stores so many questions; a round that brings one more is counted without it', () => {
  let state = published();
  const questions = Array.from({ length: 3 }, (_, n) => ({
    step: 'vote' as const,
    text: `${n} ${'?'.repeat(270)}`,
  }));
  for (let n = 0; n < 140; n++) state = submit(state, round(n, { questions }));
  expect([state.asked, state.rounds]).toEqual([399, 140]);
  expect(submit(state, round(200, { questions: questions.slice(0, 1) })).asked).toBe(400);
  // PD8: whose questions were not stored is told so, also when the round is sent again.
  const full = submit(state, round(201, { questions: questions.slice(0, 2) }));
  expect([full.asked, full.rounds]).toEqual([399, 141]);
  expect([full.unasked.length, full.unasked.at(-1)]).toEqual([8, 'round-201']);
});

test('PD6 a drill that is loaded from its rows or from a snapshot is the one that was left', () => {
  let state = published(2);
  const events: PublishedEvent[] = [];
  for (let n = 0; n < 40; n++) state = submit(state, round(n, { deal: n % 2 }), events);
  for (const command of [
    { kind: 'extend', until: 2 * DAY_MS },
    { kind: 'make-key', secretHash: hashSecret('key') },
    { kind: 'revoke-key', key: 0 },
    { kind: 'forget', player: (round(3) as { player: string }).player },
    { kind: 'withdraw' },
  ] as const)
    state = submit(state, command, events);
  const row = { after: 1, version: state.seq, at: 1, commands: [], events: publishedEvents.textOf(events) };
  const again = recordedIn(row, publishedEvents).reduce(evolvePublished, published(2));
  expect(again).toEqual(state);
  expect(PUBLISHED.restore(published(2), PUBLISHED.snapshotOf(state)!)).toEqual(state);
});
