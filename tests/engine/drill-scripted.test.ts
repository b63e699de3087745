// A rack from the table as a deal of a drill: what came at the table comes again, in a round of bots that obey the rules.
import { expect, test } from 'vitest';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { finishRound } from '../../shared-engine/bots/finish-round.ts';
import { scriptedChoice } from '../../shared-engine/bots/scripted.ts';
import type { DrillDeal } from '../../shared-engine/drill/format.ts';
import { parseDrill } from '../../shared-engine/drill/parse.ts';
import { prepareDeal } from '../../shared-engine/drill/prepare.ts';
import { dealScript } from '../../shared-engine/drill/scripted.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { neighbor, SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin } from '../../shared-engine/rules/exchange/evolve.ts';
import { PASS_SIZE, type Step } from '../../shared-engine/rules/exchange/schedule.ts';
import { bagOf } from '../../shared-engine/rules/tiles/bag.ts';
import { copiesOf, FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import type { SeatRecord } from '../../shared-engine/rules/view/record.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';

/** What the seat of this record saw, as it is laid in and saved. */
function savedDeal({ seat, dealer, start, steps }: SeatRecord): DrillDeal {
  const racks = SEATS.map((other) => (other === seat ? start : []));
  const moves = steps.flatMap((step) => (step.kind === 'move' && step.received.length > 0 ? [step] : []));
  const vote = steps.find((step) => step.kind === 'vote');
  const asks = steps.find((step) => step.kind === 'ask');
  return dealOf(
    { kind: 'manual', racks: [racks[0]!, racks[1]!, racks[2]!, racks[3]!], seed: seedNamed('saved') },
    {
      seat,
      dealer,
      scripted: {
        arrivals: Object.fromEntries(moves.map(({ step, received }) => [step, received])),
        ...(vote && { stopped: SEATS.filter((other) => other !== seat && !vote.go[other]) }),
        ...(asks && { asked: asks.asked[neighbor(seat, 'across')] }),
      },
    },
  );
}

/** The deal in a room whose player chooses anything that is allowed. */
function playedAgain(deal: DrillDeal, name: string) {
  const drill = drillOf([deal]);
  expect(parseDrill(drill, houseKernel)).toMatchObject({ ok: true });
  const prepared = prepareDeal(drill, deal, houseKernel);
  if (!prepared.ok) throw new Error(prepared.problem.message);
  const script = dealScript(deal);
  const player = stream(name, 'player');
  const { round } = finishRound(begin(openRound(prepared.deal, {})), (view, random) => {
    if (view.record.seat === deal.seat) return chooseFor('random', view, houseKernel, player);
    const own = chooseFor('random', view, houseKernel, random);
    return own && scriptedChoice(script, view, own);
  });
  return seatView(round, deal.seat).record;
}

test('R6 what came at the table comes again, as far as the set allows, whatever the player chooses', () => {
  let [compared, courtesies] = [0, 0];
  for (let nth = 0; nth < 60; nth++) {
    const seat: Seat = SEATS[nth % 4]!;
    const { round } = playOn(opened(`table ${nth}`, 1), stream(`table ${nth}`, 'players'));
    const deal = savedDeal(seatView(round, seat).record);
    const record = playedAgain(deal, `again ${nth}`);
    const { arrivals, stopped, asked } = deal.scripted!;
    const tiles = bagOf([
      ...(deal.tiles.kind === 'manual' ? deal.tiles.racks[seat] : []),
      ...Object.values(arrivals).flat(),
    ]);
    const isEnough = FACES.every((face, place) => tiles[place]! <= copiesOf(face));
    for (const step of record.steps) {
      if (step.kind === 'vote') {
        const no = SEATS.filter((other) => other !== seat && !step.go[other]);
        if (stopped) expect(no).toEqual(stopped);
      } else if (step.kind === 'ask') {
        if (asked !== undefined) expect(step.asked[neighbor(seat, 'across')]).toBe(asked);
      } else if (arrivals[step.step] && isEnough) {
        expectArrival(step.step, step.received, arrivals[step.step]!);
        compared++;
        if (step.step === 'courtesy-pass') courtesies++;
      }
    }
  }
  expect(compared).toBeGreaterThan(150);
  expect(courtesies).toBeGreaterThan(5);
});

/** What came beside it filled up a pass of which fewer tiles were laid in, or a larger number in the courtesy. */
function expectArrival(step: Step, received: readonly Face[], scripted: readonly Face[]): void {
  const [came, meant] = [bagOf(received), bagOf(scripted)];
  const others = came.reduce((sum, count, face) => sum + Math.max(0, count - meant[face]!), 0);
  const passed = step === 'courtesy-pass' ? received.length : PASS_SIZE;
  expect(others).toBeLessThanOrEqual(Math.max(0, passed - scripted.length));
}

test('R6 a tile that the player gave away and the set has no other copy of is not dealt twice', () => {
  const racks = [['east', 'east', 'east', 'east', 'bam-1'], [], [], []] as const;
  const deal = dealOf(
    { kind: 'manual', racks, seed: seedNamed('back') },
    { scripted: { arrivals: { 'first-right': ['east', 'dot-1', 'dot-2'] } } },
  );
  const prepared = prepareDeal(drillOf([deal]), deal, houseKernel);
  const left = prepared.ok ? prepared.deal.prepared[3] : [];
  expect([left.includes('east'), left.includes('dot-1'), left.includes('dot-2')]).toEqual([
    false,
    true,
    true,
  ]);
  const [came] = playedAgain(deal, 'back').steps;
  expect(came?.kind === 'move' && came.received).toEqual(expect.arrayContaining(['dot-1', 'dot-2']));
});

test('a deal that cannot be scripted is rejected in words', () => {
  const manual = { kind: 'manual', racks: [[], [], [], []], seed: seedNamed('no') } as const;
  const scripted = { arrivals: { 'first-right': ['joker'] }, stopped: [0] } as const;
  const problems = (json: unknown) => {
    const parsed = parseDrill(json, houseKernel);
    return parsed.ok ? [] : parsed.problems.map(({ message }) => message);
  };
  expect(problems({ ...drillOf([dealOf(manual, { scripted })]), form: 'tables' })).toEqual([
    'Deal 1: it is scripted, which needs bots on the other seats; play it alone or guided.',
    'Deal 1: a joker is never passed, so none can arrive; remove it from "scripted".',
    'Deal 1: seat 0 is the player\'s, who votes for itself; remove it from "stopped".',
  ]);
  const random = dealOf({ kind: 'random', seed: seedNamed('no') }, { scripted: { arrivals: {} } });
  expect(problems(drillOf([random]))).toEqual([
    'Deal 1: only a deal with tiles set by hand can be scripted; remove "scripted".',
  ]);
  const four = { ...dealOf(manual), scripted: { arrivals: { 'first-left': ['red', 'red', 'red', 'red'] } } };
  expect(problems(drillOf([four as unknown as DrillDeal]))[0]).toMatch(/must be/);
});
