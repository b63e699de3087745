// What is sent of a published drill: to a device that plays it, and to its teacher.
import {
  type PublishedDashboard,
  type PublishedDeal,
  type PublishedDrill,
  rotatedScript,
} from '../../shared-engine/index.ts';
import type { ActiveDrill } from './active-drill.ts';
import { throughAt } from './report.ts';
import { type PublishedState, phaseOf, publishedTableTerms, roundsOf } from './state.ts';

const DAY_MS = 24 * 60 * 60 * 1000;

export interface PageOptions {
  readonly now: number;
  /** For how long the drill is stored after its last event, in milliseconds. */
  readonly keptMs: number;
  readonly isTeacher: boolean;
}

/** All that a device needs to play without a network; no deals when the drill is no longer open (rule PD4). */
export function drillInfoFor(
  { code, state }: Pick<ActiveDrill, 'code' | 'state'>,
  player: string | null,
  { now, keptMs, isTeacher }: PageOptions,
): PublishedDrill {
  const { drill, terms, until, card } = state;
  const phase = phaseOf(state, now);
  const rounds = player === null ? {} : roundsOf(state, player);
  return {
    code,
    title: drill.title,
    state: phase,
    until,
    terms,
    tableTerms: publishedTableTerms(state),
    bots: drill.bots.styles,
    deals: phase === 'open' ? dealsOf(state) : [],
    card: card.kind === 'file' && phase === 'open' ? card.file : null,
    counted: drill.deals.flatMap(({ id }, place) => (rounds[place] === undefined ? [] : [id])),
    keptDays: Math.round(keptMs / DAY_MS),
    teacher: isTeacher,
  };
}

function dealsOf({ drill, deals }: PublishedState): PublishedDeal[] {
  return drill.deals.flatMap((deal, place): PublishedDeal[] => {
    const { id, title = null, task = null, comments = null } = deal;
    const prepared = deals[place];
    if (prepared === undefined) return [];
    return [{ id, title, task, comments, deal: prepared, script: rotatedScript(deal) }];
  });
}

/** `address` is the one under which phones reach this server; null where nobody has said. */
export function dashboardFor(
  { code, state }: Pick<ActiveDrill, 'code' | 'state'>,
  { now, keptMs }: Pick<PageOptions, 'now' | 'keptMs'>,
  address: string | null,
): PublishedDashboard {
  const { drill, terms, until, keys, byDeal, card } = state;
  return {
    code,
    title: drill.title,
    state: phaseOf(state, now),
    until,
    terms,
    keptDays: Math.round(keptMs / DAY_MS),
    deals: drill.deals.map(({ id, title = null, note = null }, place) => ({
      id,
      title,
      note,
      through: throughAt(state, place),
      names: Object.values(byDeal[place]?.names ?? {}).sort(),
      questions: byDeal[place]?.questions ?? [],
    })),
    address,
    drill,
    card: card.kind === 'file' ? card.file : null,
    keys: keys.filter(({ isRevoked }) => !isRevoked).map(({ id, at }) => ({ id, at })),
  };
}
