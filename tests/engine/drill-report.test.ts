// The report of a class: what was chosen by how many, what it cost, and nothing that says who chose it.
import { describe, expect, test } from 'vitest';
import { classReport } from '../../shared-engine/drill/report/class-report.ts';
import type { ClassEntry } from '../../shared-engine/drill/report/entry.ts';
import { classMean, meanOfMeasured } from '../../shared-engine/drill/report/mean.ts';
import { type StepSpread, spreadsOf } from '../../shared-engine/drill/report/spread.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { classOf } from '../kit/classes.ts';
import { drillOf, sampledDeal } from '../kit/drills.ts';
import { houseKernel, mixedRound, move } from '../kit/reviews.ts';
import { studentPoint } from '../prove/statistics/student.ts';

const drill = drillOf([sampledDeal({ pairs: { from: 1 }, jokers: { to: 2 } }, 'class')]);
const { card } = houseKernel;
const sections = card.sections.map(({ id }) => id);
const players = classOf(drill, ['strong', 'strong', 'casual', 'casual', 'random', 'random', 'typical']);
const report = classReport(drill.deals[0]!, players, card);
const spread = (step: string, kind = 'pass'): StepSpread =>
  report.steps.find((one) => one.step === step && one.kind === kind)!;

describe('the spread of a step', () => {
  test('counts every player once, and its shares add up to one', () => {
    for (const { choices, players: count } of report.steps) {
      expect(choices.reduce((sum, choice) => sum + choice.count, 0)).toBe(count);
      expect(choices.reduce((sum, choice) => sum + choice.share, 0)).toBeCloseTo(1, 12);
    }
    expect(spread('first-right').players).toBe(7);
  });

  test('shows the rack that everybody held at the first pass', () => {
    const first = spread('first-right');
    expect(first.racks).toBe(1);
    expect(first.rack).toEqual(players[0]!.record.start);
    const later = spread('first-left');
    expect(later.racks).toBeGreaterThan(1);
    expect(later.rack).toBeNull();
  });

  test('merges passes of the same faces, the most frequent first, with the loss from their analyses', () => {
    const first = spread('first-right');
    const counts = first.choices.map(({ count }) => count);
    expect([...counts].sort((a, b) => b - a)).toEqual(counts);
    expect(counts[0]).toBeGreaterThan(1);
    for (const { chosen, winsLost } of first.choices) {
      const losses = players.flatMap(({ record, review }) => {
        const pass = review.choices.find(({ step, kind }) => step === 'first-right' && kind === 'pass')!;
        const { analysis } = pass;
        const isSame = String(record.steps[0]?.kind === 'move' && record.steps[0].gave) === String(chosen);
        return isSame && analysis.depth === 'deep' ? [analysis.loss!] : [];
      });
      expect(winsLost).toEqual(meanOfMeasured(losses));
    }
  });

  test('is in the order of the round, a number of blind tiles before the pass of its step', () => {
    const places = report.steps.map(({ step, kind }) => STEPS.indexOf(step) * 2 + Number(kind !== 'blind'));
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(spread('first-left', 'blind').choices.every(({ chosen }) => typeof chosen === 'number')).toBe(
      true,
    );
  });

  test('is there before the analyses, without costs, and says how many choices are being analyzed', () => {
    const unknown = players.map((entry) => ({ ...entry, analyses: [], toGo: null }));
    const early = spreadsOf(unknown, sections);
    expect(early.map(({ choices }) => choices.map(({ chosen, count }) => [String(chosen), count]))).toEqual(
      report.steps.map(({ choices }) => choices.map(({ chosen, count }) => [String(chosen), count])),
    );
    const costs = early.flatMap((one) => [one, ...one.choices]);
    expect(costs.every(({ winsLost, costly }) => winsLost === null && costly === null)).toBe(true);
    expect([early[0]!.pending, early[0]!.best]).toEqual([7, null]);
    const { mistakes, toGoStart, pending } = classReport(drill.deals[0]!, unknown, card);
    expect([mistakes, toGoStart]).toEqual([[], null]);
    expect(pending).toBe(early.reduce((sum, one) => sum + one.pending, 0));
  });

  test('leaves out what a stand-in chose, and says for how many players it chose', () => {
    const stoodIn: ClassEntry = {
      record: {
        seat: 0,
        dealer: 1,
        terms: players[0]!.record.terms,
        start: players[0]!.record.start,
        steps: [
          move('first-right', players[0]!.record.start.slice(-3), ['bam-1', 'bam-2', 'dot-9'], {
            by: 'stand-in',
          }),
        ],
      },
      analyses: [],
      toGo: null,
      aims: [],
    };
    const [first] = spreadsOf([stoodIn, ...players], sections);
    expect(first).toMatchObject({ players: 7, stoodIn: 1 });
    expect(spreadsOf([stoodIn], sections)[0]).toMatchObject({
      players: 0,
      stoodIn: 1,
      choices: [],
      rack: null,
    });
  });

  test('shows no rack that one player alone has held', () => {
    const [first, ...others] = spreadsOf(players.slice(0, 1), sections);
    expect(first).toMatchObject({ players: 1, racks: 1, rack: null });
    expect(others.every(({ rack }) => rack === null)).toBe(true);
    expect(JSON.stringify(first)).not.toContain(JSON.stringify(players[0]!.record.start));
  });

  test('is separate for each seat where players share a table', () => {
    const tables = [1, 2].map((table) => mixedRound(`table ${table}`, 0).round);
    const entries = tables.flatMap((round) =>
      SEATS.map((seat) => ({ record: seatView(round, seat).record, analyses: null, toGo: null, aims: [] })),
    );
    const firsts = spreadsOf(entries, sections).filter(({ step }) => step === 'first-right');
    expect(firsts.map(({ seat, players: own, stoodIn }) => [seat, own + stoodIn])).toEqual(
      SEATS.map((seat) => [seat, 2]),
    );
  });

  test('grows while the class plays: a player who has not come to the step is not counted', () => {
    const behind = players.map((entry, n) =>
      n < 3 ? entry : { ...entry, record: { ...entry.record, steps: entry.record.steps.slice(0, 1) } },
    );
    const now = spreadsOf(behind, sections);
    expect(now[0]).toMatchObject({ step: 'first-right', players: 7 });
    expect(now[1]).toMatchObject({ step: 'first-across', players: 3 });
  });
});

describe('the cost of a choice', () => {
  test('is in wins, with the number of players for whom another choice was clearly better', () => {
    const first = spread('first-right');
    const above = players.filter(
      ({ review }) => review.choices.find(({ step }) => step === 'first-right')!.loss >= 0.5,
    ).length;
    expect(first).toMatchObject({ pending: 0, costly: above });
    expect(first.choices.reduce((sum, { costly }) => sum + costly!, 0)).toBe(above);
  });

  test('is told of no choice of a step, and no mistake of the deal, while one of them is still being analyzed', () => {
    const behind = players.map((entry, n) => {
      const analyses = entry.analyses!.filter(({ step }) => n > 0 || step !== 'first-right');
      return { ...entry, analyses };
    });
    const [first, second] = spreadsOf(behind, sections);
    expect(first).toMatchObject({ pending: 1, winsLost: null, best: null });
    expect(first!.choices.every(({ winsLost }) => winsLost === null)).toBe(true);
    expect(second).toEqual(report.steps[1]);
    expect(classReport(drill.deals[0]!, behind, card)).toMatchObject({ pending: 1, mistakes: [] });
  });
});

describe('the best pass', () => {
  test('is the one with the most wins of all that were found for the rack, with a reason in one sentence', () => {
    const { best } = spread('first-right');
    const found = players.flatMap(({ analyses }) =>
      analyses!.filter(({ step, kind }) => step === 'first-right' && kind === 'pass'),
    );
    const wins = Math.max(...found.map((one) => one.best.wins));
    const named = found.filter((one) => one.best.wins === wins).map((one) => String(one.best.chosen));
    expect(named).toContain(String(best!.chosen));
    expect(best!.why).toMatch(/^[A-Z].*[.]$/);
  });

  test('is not told where racks differed, nor of a rack that one player alone has come to', () => {
    expect(report.steps.filter(({ racks }) => racks > 1).every(({ best }) => best === null)).toBe(true);
    const [first, ...others] = spreadsOf(players.slice(0, 1), sections);
    expect(first!.best).not.toBeNull();
    expect(others.every(({ best }) => best === null)).toBe(true);
  });
});

describe('aims', () => {
  const aimed = players.map((entry, n) => ({
    ...entry,
    aims:
      n < 4 ? [{ step: 'first-right' as const, sections: n === 0 ? ['stairs', 'garden'] : ['stairs'] }] : [],
  }));

  test('are counted by section, as shares of the players who named one', () => {
    const [first] = spreadsOf(aimed, sections);
    expect(first!.aims).toEqual([
      { section: 'stairs', count: 4, share: 1 },
      { section: 'garden', count: 1, share: 0.25 },
    ]);
    const { sections: named } = classReport(drill.deals[0]!, aimed, card);
    expect(Object.keys(named)).toEqual(['stairs', 'garden']);
  });

  test('are left out if they name no section of the card', () => {
    const typed = [
      { ...players[0]!, aims: [{ step: 'first-right' as const, sections: ['Wilma was here'] }] },
    ];
    expect(JSON.stringify(classReport(drill.deals[0]!, typed, card))).not.toContain('Wilma');
  });
});

describe('names of players', () => {
  test('do not get into a report, whatever else the entries carry', () => {
    const canary = { name: 'Zyphrania', player: 'Zyphrania', code: 'Zyphrania' };
    const marked = players.map((entry) => ({
      ...entry,
      ...canary,
      record: { ...entry.record, ...canary },
      analyses: entry.analyses!.map((choice) => ({ ...choice, ...canary })),
    }));
    const told = classReport(drill.deals[0]!, marked, card);
    expect(JSON.stringify(told)).not.toContain('Zyphrania');
    expect(told).toEqual(report);
  });

  test('cannot be guessed from an order: the report does not depend on who comes first', () => {
    const turned = [...players.slice(3), ...players.slice(0, 3)].reverse();
    expect(JSON.stringify(classReport(drill.deals[0]!, turned, card))).toBe(JSON.stringify(report));
  });
});

test('tiles to go are averaged over the players who have come to the close', () => {
  expect(report.toGoStart).toMatchObject({ n: 7, mean: players[0]!.review.toGoStart });
  expect(report.toGoEnd!.mean).toBeCloseTo(
    players.reduce((sum, { review }) => sum + review.toGoEnd, 0) / 7,
    3,
  );
});

test('a report of nobody is empty', () => {
  expect(classReport({ id: 'empty', title: 'Nobody came' }, [], card)).toEqual({
    format: 'quadrille-class-report/2',
    deal: 'empty',
    title: 'Nobody came',
    players: 0,
    pending: 0,
    toGoStart: null,
    toGoEnd: null,
    steps: [],
    mistakes: [],
    sections: {},
  });
});

describe('a mean and its interval', () => {
  test('uses Student’s 95 % points, checked by a second computation for 7 to 30 degrees of freedom', () => {
    for (let n = 8; n <= 31; n++) {
      const values = Array.from({ length: n }, (_, i) => i * 10);
      const { mean, high } = classMean(values)!;
      const deviation = Math.sqrt(values.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (n - 1));
      expect((high! - mean) / (deviation / Math.sqrt(n))).toBeCloseTo(studentPoint(0.05, n - 1), 2);
    }
  });

  test('has no interval for fewer than eight values, is null for none, and has no width for equal values', () => {
    expect(classMean([])).toBeNull();
    const of = (n: number) => classMean(Array.from({ length: n }, () => 0.3));
    expect([of(1), of(7)]).toMatchObject([1, 7].map((n) => ({ n, mean: 0.3, low: null, high: null })));
    expect(of(8)).toEqual({ n: 8, mean: 0.3, low: 0.3, high: 0.3 });
  });
});
