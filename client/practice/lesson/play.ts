// Where somebody stands in a lesson: what was chosen at each of its moments, and which moment comes next.
import type { AnswerChoice, Lesson, LessonDeal, LessonMoment } from '../../../shared-engine/index.ts';
import { type UnpackedText, unpackText } from '../../app/routes/packed-text.ts';
import type { Judgement } from '../question/judged.ts';

/** A deal of the lesson and one of its moments, both from 0; behind the last moment of a deal the deal is over. */
export interface LessonPlace {
  readonly deal: number;
  readonly moment: number;
}

export const LESSON_BEGIN: LessonPlace = { deal: 0, moment: 0 };

export type OwnChoices = ReadonlyMap<string, AnswerChoice>;

export function placeKey({ deal, moment }: LessonPlace): string {
  return `${deal}.${moment}`;
}

export function dealAt({ deals }: Lesson, { deal }: LessonPlace): LessonDeal {
  return deals[deal]!;
}

/** Null where the deal is over. */
export function momentAt(lesson: Lesson, place: LessonPlace): LessonMoment | null {
  return dealAt(lesson, place).moments[place.moment] ?? null;
}

/** Whether there is such a place: a moment of one of its deals, or the end of one. */
export function hasPlace({ deals }: Lesson, { deal, moment }: LessonPlace): boolean {
  return moment <= (deals[deal]?.moments.length ?? -1);
}

/** The beginning of the next deal; null behind the last one. */
export function dealAfter({ deals }: Lesson, { deal }: LessonPlace): LessonPlace | null {
  return deal + 1 < deals.length ? { deal: deal + 1, moment: 0 } : null;
}

/** Whether two choices at one step are the same, in whatever order their tiles were tapped. */
export function isSameChoice(one: AnswerChoice, other: AnswerChoice): boolean {
  if (one.kind === 'pass' && other.kind === 'pass') {
    return one.blind === other.blind && [...one.tiles].sort().join() === [...other.tiles].sort().join();
  }
  return JSON.stringify(one) === JSON.stringify(other);
}

/** At how many steps of the whole lesson the teacher's choice was made too, of those at which the teacher has chosen. */
export function agreement(
  { deals }: Lesson,
  chosen: OwnChoices,
): { readonly same: number; readonly of: number } {
  const pairs = deals.flatMap(({ moments }, deal) =>
    moments.flatMap(({ teacher }, moment) => {
      const own = chosen.get(placeKey({ deal, moment }));
      return teacher === null || own === undefined ? [] : [isSameChoice(own, teacher)];
    }),
  );
  return { same: pairs.filter(Boolean).length, of: pairs.length };
}

/** Whether the judge finds something better than this choice. */
export function isFaulted(judgement: Judgement | null): boolean {
  if (judgement?.is !== 'done') return false;
  return judgement.parts.some(
    ({ story: { verdict } }) => verdict === 'costly' || verdict === 'a-little-worse',
  );
}

/** What stands behind the # of a lesson's link, unpacked; null where nothing stands there. */
export async function unpackLesson(packed: string): Promise<UnpackedText | null> {
  return packed === '' ? null : unpackText(packed);
}
