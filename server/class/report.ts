// The report of a class for its teacher: what was chosen, by nobody's name, and per pupil what the terms allow.
import { classReport, type DrillReport } from '../../shared-engine/index.ts';
import { discretionFor } from './discretion.ts';
import { entriesOf, type PupilEntry } from './entries.ts';
import type { LiveClass } from './live-class.ts';
import { pupilsIn } from './state.ts';
import type { WallPorts } from './wall.ts';

export async function reportFor(live: LiveClass, { reviewer, judges }: WallPorts): Promise<DrillReport> {
  const { drill, dealt, terms } = live.state;
  const deeper = judges && { judges, wanted: () => false, onJudged() {} };
  const played = await Promise.all(
    drill.deals.slice(0, dealt).map(async (deal, place) => ({
      deal,
      discretion: discretionFor(live, place),
      entries: await entriesOf(live, place, { reviewer, deeper }),
    })),
  );
  return {
    title: drill.title,
    deals: played.map(({ deal, entries, discretion }) =>
      classReport(
        deal,
        entries.map(({ entry }) => entry),
        live.card.card,
        discretion,
      ),
    ),
    pupils: terms.names
      ? pupilsIn(live.state).map(({ id, name }) => ({
          name,
          deals: played.flatMap(({ deal, entries }) => resultOf(deal.id, entries, id)),
        }))
      : null,
  };
}

type Result = NonNullable<DrillReport['pupils']>[number]['deals'][number];

/** Sums alone: which tiles a pupil held and passed is in that pupil's own review. */
function resultOf(deal: string, entries: readonly PupilEntry[], pupil: number): Result[] {
  const review = entries.find((one) => one.pupil.id === pupil)?.entry.review;
  if (!review) return [];
  const own = review.choices.filter(({ by }) => by === 'owner');
  const loss = own.reduce((sum, choice) => sum + choice.loss, 0);
  const { toGoStart, toGoEnd } = review;
  return [{ deal, toGoStart, toGoEnd, loss: Math.round(loss * 1000) / 1000 }];
}
