// npm run prove -- anonymity: whoever fetches everything of an anonymous class, always, cannot tell who chose what.
import { countsIn, firstDifference, ofFirstDeal, stepsIn } from '../anonymity/comparison.ts';
import {
  type Evening,
  type EveningPlan,
  type Fetched,
  LONERS,
  OPINIONS,
  playEvening,
} from '../anonymity/evening.ts';
import { playPublished } from '../anonymity/published.ts';
import type { Proof, ProofRow } from '../proof.ts';

type Pair = readonly [number, number];

export const proof: Proof = {
  summary: 'In an anonymous class no byte depends on which of two players made which choice.',
  async run({ seed, size }) {
    const full = size === 'full';
    const deals = full ? 2 : 1;
    const common = { seed, deals, isThorough: full } as const;
    const alone = { ...common, form: 'alone', players: 7 } as const;
    const guided = { ...common, form: 'guided', players: 6 } as const;
    const tables = { ...common, form: 'tables', players: 24, scripts: SCRIPTS } as const;
    return [
      await exchangeRow(alone, full ? everyPair(7) : [[0, 1]]),
      await exchangeRow({ ...guided, isAnalyzed: true }, full ? everyPair(6) : [[0, 3]]),
      ...(full ? [await exchangeRow(tables, TABLE_PAIRS)] : []),
      await smallClassRow({ ...guided, players: 3 }),
      await seenRow({ ...guided, deals: 1, terms: { names: true } }),
      ...(await differencingRows({ ...alone, players: 8 })),
      ...(await publishedRows(seed, full)),
    ];
  },
};

/** The two that are shared, and three that nobody else follows, the first of which votes to go on. */
const [A, B] = [0, 1];
const [X, Y, Z] = [LONERS, LONERS + 1, LONERS + 3];
/**
 * Who follows which script at six tables of four that play the same deal. On three of the seats three players at least
 * choose alike and three at least do not, so that counts are told; on the last one too few do. A table and the third one
 * after it differ in one seat: where these two players exchange their scripts, the tables exchange all that is played
 * there, and so does the second Charleston, which the second table alone goes through.
 */
const TABLES = [
  [A, B, A, B],
  [A, A, X, A],
  [Y, A, A, B],
  [B, B, A, B],
  [A, B, X, A],
  [Y, A, Z, B],
];
const SCRIPTS: Readonly<Record<number, number>> = { ...TABLES.flat() };
const TABLE_PAIRS: readonly Pair[] = [
  [0, 12],
  [5, 17],
  [10, 22],
];

/** The players of a pair exchange the scripts of all their choices. */
async function exchangeRow(plan: EveningPlan, pairs: readonly Pair[]): Promise<ProofRow> {
  const before = await playEvening(plan);
  const told: string[] = [];
  const { scripts = {} } = plan;
  for (const [a, b] of pairs) {
    const exchanged = { [a]: scripts[b] ?? b, [b]: scripts[a] ?? a };
    const after = await playEvening({ ...plan, scripts: { ...scripts, ...exchanged } });
    const place = firstDifference(before, after);
    if (place !== null) told.push(`${a} and ${b}: ${place}`);
  }
  const counted = countsIn(before).length;
  return {
    what: `${plan.form}, ${plan.players} players, ${before.length} moments, ${counted} counts told: pairs of ${pairs.length} whose exchange is seen`,
    value: told.join('; ') || 0,
    bar: '0, with counts told',
    ok: told.length === 0 && counted > 0,
  };
}

/** Of three players nothing is counted, so that one may choose anything. */
async function smallClassRow(plan: EveningPlan): Promise<ProofRow> {
  const place = firstDifference(
    withoutRepeats(await playEvening(plan)),
    withoutRepeats(await playEvening({ ...plan, scripts: { 0: LONERS } })),
  );
  const what = `${plan.players} players: what is seen of another choice`;
  return { what, value: place ?? 0, bar: '0', ok: place === null };
}

/** The attack itself works: it sees an exchange where the class was told that choices are shown. */
async function seenRow(plan: EveningPlan): Promise<ProofRow> {
  const after = await playEvening({ ...plan, scripts: { 0: 1, 1: 0 } });
  const ok = firstDifference(await playEvening(plan), after) !== null;
  return { what: 'a class with names: an exchange is seen', value: ok, bar: 'true', ok };
}

/** Reveals, joins, leaves, stand-ins and a restart between the choices: no figure that was told ever changes. */
async function differencingRows(plan: EveningPlan): Promise<ProofRow[]> {
  const accepted: boolean[] = [];
  const reveal = async (evening: Evening) => void accepted.push(await evening.reveal('first-right'));
  const between: EveningPlan['between'] = {
    2: reveal,
    5: reveal,
    7: reveal,
    8: (evening) => evening.join('Late'),
    10: (evening) => evening.leave(3),
    12: (evening) => evening.restart(),
    15: (evening) => evening.standIn(1),
    16: async (evening) => void (await evening.reveal('first-across')),
    18: (evening) => evening.leave(0),
  };
  const late = plan.players;
  const played = (script: number) => playEvening({ ...plan, between, scripts: { [late]: script } });
  const fetched = await played(LONERS);
  const reveals = accepted.slice(0, 3).join();
  const counts = countsIn(fetched);
  const smallest = Math.min(...counts);
  const changed = changedFigures(fetched);
  // In the deals after this one the late player is counted like everybody else.
  const ofLate = (evening: readonly Fetched[]) => withoutRepeats(ofFirstDeal(evening));
  const seen = firstDifference(ofLate(fetched), ofLate(await played(LONERS + OPINIONS)));
  return [
    {
      what: 'reveals with 2, 5 and 7 choices that were accepted',
      value: reveals,
      bar: 'false,false,true',
      ok: reveals === 'false,false,true',
    },
    {
      what: `${fetched.length} moments with joins, leaves, stand-ins and restarts: figures that changed once told`,
      value: changed.join('; ') || 0,
      bar: '0',
      ok: changed.length === 0 && counts.length > 0,
    },
    { what: 'players behind the smallest number told', value: smallest, bar: '>= 3', ok: smallest >= 3 },
    {
      what: 'what is seen of a late player’s choices in that deal',
      value: seen ?? 0,
      bar: '0',
      ok: seen === null,
    },
  ];
}

/**
 * Of a published drill, two who are told of for the first time in one release exchange choices and questions (rules PD7
 * and PD8). The attack works: an exchange with a later release is seen.
 */
async function publishedRows(seed: string, full: boolean): Promise<ProofRow[]> {
  const plan = { seed, players: full ? 25 : 15 };
  const before = await playPublished(plan);
  const differs = async (a: number, b: number) =>
    firstDifference(before, await playPublished({ ...plan, as: { [a]: b, [b]: a } }));
  const pairs: readonly Pair[] = full ? [...everyPair(10), [10, 14], [16, 17], [20, 24]] : [[10, 14]];
  const told: string[] = [];
  for (const [a, b] of pairs) {
    const place = await differs(a, b);
    if (place !== null) told.push(`${a} and ${b}: ${place}`);
  }
  const counts = countsIn(before).length;
  const isSeen = (await differs(4, 11)) !== null;
  return [
    {
      what: `a published drill, ${plan.players} players, ${counts} counts told: pairs of ${pairs.length} whose exchange is seen`,
      value: told.join('; ') || 0,
      bar: '0, with counts told',
      ok: told.length === 0 && counts > 0,
    },
    { what: 'an exchange between two releases is seen', value: isSeen, bar: 'true', ok: isSeen },
  ];
}

/** What somebody sees who does not count how often nothing has changed. */
function withoutRepeats(fetched: readonly Fetched[]): Fetched[] {
  return fetched.filter((one, n) => JSON.stringify(one) !== JSON.stringify(fetched[n - 1]));
}

function everyPair(players: number): Pair[] {
  const all = Array.from({ length: players }, (_, n) => n);
  return all.flatMap((a) => all.slice(a + 1).map((b): Pair => [a, b]));
}

function changedFigures(fetched: readonly Fetched[]): string[] {
  const told = new Map<string, string>();
  return fetched.flatMap((one, moment) =>
    stepsIn(one).flatMap(({ deal, spread }) => {
      const key = `${deal} ${spread.seat} ${spread.step} ${spread.kind}`;
      const text = JSON.stringify(spread);
      const before = told.get(key) ?? text;
      told.set(key, before);
      return before === text ? [] : [`moment ${moment}: ${key}`];
    }),
  );
}
