// A class on the page: drills while they are prepared, files, addresses, and the sentences of its screens.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { pathOf, routeOf, tidyCode } from '../../client/app/routes/route.ts';
import { keyFileText, keyIn, keyLink, pathInKeyFile } from '../../client/class/keys/teacher-key.ts';
import { countMessage } from '../../client/class/lead/guided-strings.ts';
import { clockText, DASHBOARD, placeText, statusText } from '../../client/class/lead/strings.ts';
import { asSeen } from '../../client/class/model/requests.ts';
import { guidedMessage } from '../../client/class/player/guided-message.ts';
import { termsSentences } from '../../client/class/player/strings.ts';
import { constraintWords } from '../../client/class/prepare/constraint-words.ts';
import {
  asEast,
  boundOf,
  classPartFor,
  copyOf,
  emptyDrill,
  moved,
  newDeal,
  ownRack,
  withAmount,
  withDeal,
  withOwnRack,
  withText,
} from '../../client/class/prepare/draft.ts';
import { anonymitySentences } from '../../client/class/prepare/strings.ts';
import { costOf, costText, scaleEndOf } from '../../client/class/results/cost.ts';
import { reportJson } from '../../client/class/results/report-files.ts';
import { rowsWithin } from '../../client/class/results/spread-rows.ts';
import { publicOrigin, reachableOrigin, setPublicAddress } from '../../client/storage/public-address.ts';
import { fileName } from '../../client/ui/save-file.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { readDrillFile } from '../../shared-engine/drill/file.ts';
import { classReport } from '../../shared-engine/drill/report/class-report.ts';
import type { DashboardPlayer } from '../../shared-engine/protocol/class.ts';
import { type DrillReport, drillReportSchema } from '../../shared-engine/protocol/class-report.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { seatView } from '../../shared-engine/rules/view/view.ts';
import { classOf } from '../kit/classes.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { houseKernel } from '../kit/reviews.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';

let seeds = 0;
const seed = () => seedNamed(`draft ${++seeds}`);

describe('a drill while it is prepared', () => {
  it('can be read back from its file, with deals of all three kinds', () => {
    let drill = { ...emptyDrill(seed), title: 'Made here' };
    drill = { ...drill, deals: [...drill.deals, newDeal(drill.deals, 'manual', seed())] };
    drill = { ...drill, deals: [...drill.deals, newDeal(drill.deals, 'sampled', seed())] };
    drill = withDeal(drill, 1, asEast(withOwnRack(drill.deals[1]!, ['bam-3', 'bam-3']), true));
    expect(readDrillFile(JSON.stringify(drill), houseKernel)).toEqual({ ok: true, file: { drill } });
    expect(ownRack(drill.deals[1]!)).toEqual(['bam-3', 'bam-3']);
    expect(drill.deals.map(({ seat, dealer }) => seat === dealer)).toEqual([false, true, false]);
  });

  it('lets nothing be taken home from tables of four, whatever was ticked before', () => {
    const terms = { deadline: null, racks: false, names: true, cardClosed: false, takeHome: true };
    const drill = emptyDrill(seed);
    expect(classPartFor(drill, terms)).toEqual(terms);
    expect(classPartFor({ ...drill, form: 'tables' }, terms)).not.toHaveProperty('takeHome');
  });

  it('gives a new deal an id that no other deal has, also after one was removed', () => {
    const first = emptyDrill(seed).deals;
    const three = [...first, newDeal(first, 'random', seed())];
    const again = newDeal(three.slice(1), 'random', seed());
    expect(new Set([...three.slice(1), again].map(({ id }) => id)).size).toBe(2);
  });

  it('keeps each deal once however its deals are moved, and gives a copy an id of its own', () => {
    const { deals, ...drill } = emptyDrill(seed);
    const three = { ...drill, deals: [...deals, newDeal(deals, 'manual', seed())] };
    const four = { ...three, deals: [...three.deals, copyOf(three.deals[1]!, three.deals)] };
    expect(four.deals.map(({ id }) => id)).toEqual(['deal-1', 'deal-2', 'deal-3']);
    expect(moved(four, 2, 0).deals.map(({ id }) => id)).toEqual(['deal-3', 'deal-1', 'deal-2']);
    expect(moved(moved(four, 0, 1), 1, 0)).toEqual(four);
  });

  it('says in one line what its racks should hold', () => {
    const { sections } = houseKernel.card;
    expect(constraintWords({}, sections)).toMatch(/^Any rack/);
    const wish = { jokers: 1, pairs: { from: 2 }, inARow: { to: 4 }, section: sections[0]!.id };
    expect(constraintWords(wish, sections)).toBe(
      `Jokers: 1 · Pairs, pungs and kongs: at least 2 · Numbers in a row in one suit: at most 4 · Closest section of the card: ${sections[0]!.name}`,
    );
  });

  it('loses a text that is emptied, and an amount of a constraint that may be anything', () => {
    const deal = newDeal([], 'sampled', seed());
    expect(withText(withText(deal, 'title', 'Pairs'), 'title', '')).toEqual(deal);
    for (const bound of ['exactly', 'at-least', 'at-most'] as const) {
      const constraint = withAmount({ section: 'stairs' }, 'pairs', bound, 2);
      expect(boundOf(constraint.pairs)).toEqual({ bound, count: 2 });
      expect(withAmount(constraint, 'pairs', 'any', 2)).toEqual({ section: 'stairs' });
    }
  });

  it('is saved in a file named after its title', () => {
    expect(fileName('Tuesday: pairs before runs!')).toBe('tuesday-pairs-before-runs');
    expect(fileName('火曜日')).toBe('drill');
  });
});

const LOCAL = 'http://localhost:8080';

const PLAYER: DashboardPlayer = {
  id: 0,
  name: 'Ines',
  table: 1,
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
  given: 0,
  rack: null,
};

describe('the dashboard', () => {
  it.each<[Partial<DashboardPlayer>, string, string]>([
    [{}, 'deal 2, first across', 'choosing'],
    [{ submitted: true }, 'deal 2, first across', 'has chosen'],
    [{ held: true, present: false }, 'deal 2, first across', 'stopped, away'],
    [{ at: 'waiting', deal: 0 }, 'before the first deal', 'waiting'],
    [{ at: 'after-vote' }, 'deal 2, after the vote', 'playing'],
    [{ at: 'closed' }, 'deal 2, finished', 'reading the review'],
    [{ at: 'closed', ready: true }, 'deal 2, finished', 'ready for the next deal'],
    [{ standIn: true, present: false }, 'deal 2, first across', 'choosing, a bot plays, away'],
  ])('says of a player with %j: %s, %s', (about, where, doing) => {
    expect([placeText({ ...PLAYER, ...about }), statusText({ ...PLAYER, ...about })]).toEqual([where, doing]);
  });

  it('tells a player each thing that the teacher will see', () => {
    const told = [true, false].flatMap((on) =>
      termsSentences({ deadline: null, racks: on, names: on, cardClosed: on }),
    );
    expect(new Set(told).size).toBe(8);
  });

  it('tells a teacher who leaves names and racks closed when there will be no numbers', () => {
    expect(anonymitySentences('tables').join()).toContain('fewer than 24 players');
    for (const form of ['alone', 'guided'] as const) {
      expect(anonymitySentences(form).join()).toContain('fewer than six players');
    }
  });

  it('names the next deal, and the step before which the tables stop next', () => {
    expect(DASHBOARD.start(2)).toBe('Start deal 2');
    expect(DASHBOARD.advanceTo('first-across')).toBe('Continue; stop before first across');
    expect(DASHBOARD.waiting(1, 'vote')).toBe('1 player is waiting before the vote on a second Charleston.');
  });

  it('says how many tiles a pass of the teacher lacks, or has too many', () => {
    expect([countMessage(3, 2), countMessage(2, 4)]).toEqual([
      'Choose 1 more tile.',
      'Choose 2 fewer tiles.',
    ]);
  });

  it('tells a player of a guided deal to wait only while the teacher holds the table', () => {
    const { round } = playOn(opened('line'), stream('line', 'p'), ({ resolved }) => resolved.length === 1);
    const view = seatView(round, 0);
    expect(guidedMessage(view, true)).toMatch(/^You have chosen/);
    expect(guidedMessage(view, false)).toBeNull();
  });

  it('counts minutes and seconds, and never below zero', () => {
    expect([clockText(65_900), clockText(9_000), clockText(-5)]).toEqual(['1:05', '0:09', '0:00']);
  });

  it('gives a cost in wins in round words, and none before it is known', () => {
    const lost = (value: number, halfWidth: number) => costText(costOf({ winsLost: { value, halfWidth } }));
    expect(lost(2, 0.5)).toBe('about 2 fewer wins');
    expect(lost(1, 0.5)).toBe('about 1 fewer win');
    expect(lost(12.4, 0.5)).toBe('about 12 fewer wins');
    expect(lost(0.4, 0.5)).toBe('perhaps 0.4 fewer wins');
    expect(lost(-0.2, 0.1)).toBe('as good as the best');
    expect(costText(costOf({ winsLost: null }))).toBe('–');
    expect(scaleEndOf([])).toBe(1);
    expect(scaleEndOf([{ value: 2, from: 1.6, to: 2.4 }])).toBe(3);
  });

  it('orders choices from the best to the costliest, and those whose cost is not known by how many made them', () => {
    const choice = (chosen: number, count: number, value: number | null) => {
      const winsLost = value === null ? null : { value, halfWidth: 0.1 };
      return { chosen, count, share: count / 10, mistakes: [], costly: null, winsLost };
    };
    const order = (best: { chosen: number; why: string } | null, ...choices: ReturnType<typeof choice>[]) =>
      rowsWithin({ choices, best }, 9).shown.map(({ chosen }) => chosen);
    expect(order({ chosen: 2, why: '' }, choice(0, 5, 1.2), choice(1, 3, 0.3), choice(2, 2, 0.4))).toEqual([
      2, 1, 0,
    ]);
    expect(order(null, choice(0, 2, null), choice(1, 5, null), choice(2, 3, null))).toEqual([1, 2, 0]);
    // A sentence about the others takes the last row, and what a guided class is told below takes one more.
    const choices = [1, 2, 3, 4, 5, 6].map((chosen) => choice(chosen, 3, chosen));
    const room = (more: object) => rowsWithin({ choices, best: null, ...more }, 5).shown.length;
    expect([room({}), room({ hidden: 3 }), room({ hidden: 3, advancedWith: 1 })]).toEqual([4, 4, 3]);
  });

  it('knows an address that only this computer can open from one that phones reach', () => {
    for (const own of [
      'http://localhost:8080',
      'http://127.0.0.1:80',
      'http://[::1]:8080',
      'ftp://a.example',
      '',
      'http://',
    ]) {
      expect(publicOrigin(own)).toBeNull();
    }
    expect(publicOrigin('192.168.0.12:8080/lead')).toBe('http://192.168.0.12:8080');
    const storage = memoryStorage();
    expect(reachableOrigin(storage, { own: LOCAL, server: null })).toBeNull();
    expect(setPublicAddress(storage, 'localhost')).toBe(false);
    expect(setPublicAddress(storage, ' https://club.example/ ')).toBe(true);
    expect(reachableOrigin(storage, { own: LOCAL, server: null })).toBe('https://club.example');
    // What the operator says goes before what was typed in one browser.
    expect(reachableOrigin(storage, { own: LOCAL, server: 'https://table.example' })).toBe(
      'https://table.example',
    );
    expect(setPublicAddress(storage, '')).toBe(true);
    expect(reachableOrigin(storage, { own: 'https://table.example', server: null })).toBe(
      'https://table.example',
    );
  });
});

describe('a teacher’s key', () => {
  const key = 'k'.repeat(43);
  const link = keyLink('https://example.org', 'ABCDEFGH', key);

  it('TK1 stands behind the # of its link, and is read from a file at whichever address the server is reached', () => {
    expect(link).toBe(`https://example.org/c/ABCDEFGH#key=${key}`);
    expect(pathInKeyFile(keyFileText('Tuesday', link))).toBe(`/c/ABCDEFGH#key=${key}`);
    const others = ['', '{', '[]', '{"format":"quadrille-drill/1"}', keyFileText('x', 'javascript:alert(1)')];
    expect(others.map(pathInKeyFile)).toEqual(others.map(() => null));
    expect([keyIn(`#key=${key}`), keyIn('#key=short'), keyIn('')]).toEqual([key, null, null]);
  });

  it('TK6 goes with what the dashboard showed, so that two dashboards do once what they do at once', () => {
    const seen = { dealt: 2, players: [{ id: 3, given: 30 }] };
    expect(asSeen({ kind: 'deal-next' }, seen)).toEqual({ kind: 'deal-next', dealt: 2 });
    expect(asSeen({ kind: 'more-time', player: null, seconds: 30 }, seen)).toMatchObject({
      given: { 3: 30 },
    });
    expect(asSeen({ kind: 'end' }, seen)).toEqual({ kind: 'end' });
  });
});

describe('the addresses of a class', () => {
  it.each(['/c/ABCDEFGH', '/c/ABCDEFGH/big-screen', '/c/ABCDEFGH/report', '/lead'])(
    '%s is read and written alike',
    (path) => {
      expect(pathOf(routeOf(path))).toBe(path);
    },
  );

  it('may be typed where a code is asked for', () => {
    expect(tidyCode('http://example.org/c/abcd-efgh')).toBe('ABCDEFGH');
    expect(routeOf('/c/ABCDEFGH/attic')).toMatchObject({ kind: 'missing', what: 'page' });
  });
});

it('the report as JSON is described entry by entry, and read back it is the report', () => {
  const drill = drillOf([dealOf({ kind: 'random', seed: seed() })]);
  const report: DrillReport = {
    title: 'Evening',
    ended: true,
    anonymous: false,
    deals: [classReport(drill.deals[0]!, classOf(drill, ['strong', 'casual']), houseCard())],
    players: [
      { name: 'Ines', deals: [{ deal: 'first', toGoStart: 7, toGoEnd: 5, winsLost: 0.5, stoodIn: 0 }] },
    ],
  };
  const { format, date, ...back } = JSON.parse(reportJson(report, '2026-11-26'));
  expect([format, date]).toEqual(['quadrille-report/1', '2026-11-26']);
  expect(drillReportSchema.parse(back)).toEqual(report);
  const text = readFileSync(new URL('../../shared-engine/drill/report/REPORT.md', import.meta.url), 'utf8');
  const names = new Set<string>();
  JSON.stringify(z.toJSONSchema(drillReportSchema), (_, value) => {
    for (const name of Object.keys(value?.properties ?? {})) names.add(name);
    return value;
  });
  expect(names.size).toBeGreaterThan(25);
  for (const name of ['format', 'date', ...names]) expect(text).toContain(`\`${name}\``);
});
