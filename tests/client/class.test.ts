// The desk on the page: a drill while it is made, its files, and what the desk, the wall and the address bar say.
import { describe, expect, it } from 'vitest';
import {
  asEast,
  boundOf,
  emptyDrill,
  newDeal,
  ownRack,
  withAmount,
  withDeal,
  withOwnRack,
  withText,
} from '../../client/class/prepare/draft.ts';
import { fileName } from '../../client/ui/save-file.ts';
import { guidedMessage } from '../../client/class/player/guided-strings.ts';
import { reportCsv } from '../../client/class/results/report-files.ts';
import { commonUnit, costOf, costWords } from '../../client/class/results/spread-strings.ts';
import { clockText, statusText, termsSentences, placeText } from '../../client/class/strings.ts';
import { pathOf, routeOf, tidyCode } from '../../client/app/routes/route.ts';
import {
  classReport,
  type DashboardPlayer,
  type DrillReport,
  houseCard,
  readDrill,
  seatView,
  stream,
} from '../../shared-engine/index.ts';
import { classOf } from '../kit/classes.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { houseKernel } from '../kit/reviews.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';

let seeds = 0;
const seed = () => seedNamed(`draft ${++seeds}`);

describe('a drill while it is made', () => {
  it('is one that the drill parser takes, with deals of all three kinds', () => {
    let drill = { ...emptyDrill(seed), title: 'Made here' };
    drill = { ...drill, deals: [...drill.deals, newDeal(drill.deals, 'manual', seed())] };
    drill = { ...drill, deals: [...drill.deals, newDeal(drill.deals, 'sampled', seed())] };
    drill = withDeal(drill, 1, asEast(withOwnRack(drill.deals[1]!, ['bam-3', 'bam-3']), true));
    expect(readDrill(JSON.stringify(drill), houseKernel)).toEqual({ ok: true, drill });
    expect(ownRack(drill.deals[1]!)).toEqual(['bam-3', 'bam-3']);
    expect(drill.deals.map(({ seat, dealer }) => seat === dealer)).toEqual([false, true, false]);
  });

  it('gives a new deal an id that no other has, also after one was taken out', () => {
    const first = emptyDrill(seed).deals;
    const three = [...first, newDeal(first, 'random', seed())];
    const again = newDeal(three.slice(1), 'random', seed());
    expect(new Set([...three.slice(1), again].map(({ id }) => id)).size).toBe(2);
  });

  it('takes a text out when it is emptied, and a wish when anything will do', () => {
    const deal = newDeal([], 'sampled', seed());
    expect(withText(withText(deal, 'title', 'Pairs'), 'title', '')).toEqual(deal);
    for (const bound of ['exactly', 'at-least', 'at-most'] as const) {
      const wish = withAmount({ section: 'runs' }, 'pairs', bound, 2);
      expect(boundOf(wish.pairs)).toEqual({ bound, count: 2 });
      expect(withAmount(wish, 'pairs', 'any', 2)).toEqual({ section: 'runs' });
    }
  });

  it('is saved under its title', () => {
    expect(fileName('Tuesday: pairs before runs!')).toBe('tuesday-pairs-before-runs');
    expect(fileName('火曜日')).toBe('drill');
  });
});

const PLAYER: DashboardPlayer = {
  id: 0,
  name: 'Ines',
  seat: 0,
  present: true,
  standIn: false,
  ready: false,
  deal: 2,
  at: 'first-across',
  submitted: false,
  held: false,
  since: 0,
  remaining: null,
  rack: null,
};

describe('the words of the desk', () => {
  it.each<[Partial<DashboardPlayer>, string, string]>([
    [{}, 'deal 2, first across', 'chooses'],
    [{ submitted: true }, 'deal 2, first across', 'has chosen'],
    [{ held: true, present: false }, 'deal 2, first across', 'held, away'],
    [{ at: 'waiting', deal: 0 }, 'before the first deal', 'waits'],
    [{ at: 'closed' }, 'deal 2, closed', 'reads the review'],
    [{ at: 'closed', ready: true }, 'deal 2, closed', 'wants the next deal'],
    [{ standIn: true, present: false }, 'deal 2, first across', 'chooses, a bot plays on, away'],
  ])('say of a player with %j: %s, %s', (about, where, doing) => {
    expect([placeText({ ...PLAYER, ...about }), statusText({ ...PLAYER, ...about })]).toEqual([where, doing]);
  });

  it('tell a player each thing that the teacher will see', () => {
    const told = [true, false].flatMap((on) =>
      termsSentences({ deadline: null, racks: on, names: on, cardClosed: on }),
    );
    expect(new Set(told).size).toBe(5);
  });

  it('say that a class of one line is waited for only while its teacher holds the table', () => {
    const { round } = playOn(opened('line'), stream('line', 'p'), ({ resolved }) => resolved.length === 1);
    const view = seatView(round, 0);
    expect(guidedMessage(view, true)).toMatch(/^You have chosen/);
    expect(guidedMessage(view, false)).toBeNull();
  });

  it('count minutes and seconds, and never below nothing', () => {
    expect([clockText(65_900), clockText(9_000), clockText(-5)]).toEqual(['1:05', '0:09', '0:00']);
  });

  it('speak of a cost in points where it was looked at closely, in tiles until then, with how sure that is', () => {
    const loss = { n: 3, mean: 0.5, low: 0.25, high: 0.75 };
    const winsLost = { value: 2, within: 0.5 };
    const alone = (mean: number) => ({ loss: { n: 1, mean, low: null, high: null }, points: null });
    expect(costWords(costOf({ loss, winsLost: null }, 'tiles'))).toBe('0.50 tiles (0.25 to 0.75)');
    expect(costWords(costOf({ loss, winsLost }, 'points'))).toBe('2.00 points (1.50 to 2.50)');
    expect(costWords(costOf(alone(0.4), 'tiles'))).toBe('0.40 tiles');
    expect(costWords(costOf(alone(0), 'tiles'))).toBe('nothing better was found');
    expect(costWords(costOf({ loss: null, winsLost: null }, 'tiles'))).toBe('not judged yet');
    expect([commonUnit([{ loss, winsLost }, alone(0)]), commonUnit([{ loss, winsLost }])]).toEqual([
      'tiles',
      'points',
    ]);
  });
});

describe('the addresses of a class', () => {
  it.each(['/c/ABCDEFGH', '/c/ABCDEFGH/wall', '/c/ABCDEFGH/report', '/lead'])(
    '%s leads there and back',
    (path) => {
      expect(pathOf(routeOf(path))).toBe(path);
    },
  );

  it('are taken as codes too', () => {
    expect(tidyCode('http://example.org/c/abcd-efgh')).toBe('ABCDEFGH');
    expect(routeOf('/c/ABCDEFGH/attic')).toEqual({ kind: 'front' });
  });
});

it('the tables of a report stand one below the other, names in quotes where a spreadsheet would run them', () => {
  const drill = drillOf([dealOf({ kind: 'random', seed: seedNamed('desk report') })]);
  const deal = classReport(drill.deals[0]!, classOf(drill, ['strong', 'casual']), houseCard());
  const report: DrillReport = {
    title: 'Evening',
    deals: [deal],
    players: [{ name: '=1+1', deals: [{ deal: 'first', toGoStart: 7, toGoEnd: 5, loss: 0.5 }] }],
  };
  const tables = reportCsv(report).split('\r\n\r\n');
  expect(tables).toHaveLength(4);
  expect(tables.at(-1)).toBe(
    "player,deal,to go as dealt,to go at the close,tiles lost\r\n'=1+1,first,7,5,0.5\r\n",
  );
});
