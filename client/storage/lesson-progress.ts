// Where somebody stands in the lesson that is played along: the tab knows, also when it is loaded anew.
import * as z from 'zod';
import { answerChoiceSchema, textHash } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

const KEY = 'lesson';

const progressSchema = z.strictObject({
  /** Which lesson, by a hash of its text: what was chosen belongs to no other. */
  of: z.string(),
  place: z.strictObject({ deal: z.int().min(0), moment: z.int().min(0) }),
  /** By the key of the place. */
  chosen: z.array(z.tuple([z.string(), answerChoiceSchema])).readonly(),
});
export type LessonProgress = Omit<z.infer<typeof progressSchema>, 'of'>;

/** Null where nothing of this lesson was chosen in this tab. */
export function readLessonProgress(tab: TextStorage, lesson: string): LessonProgress | null {
  try {
    const parsed = progressSchema.safeParse(JSON.parse(tab.read(KEY) ?? 'null'));
    return parsed.success && parsed.data.of === textHash(lesson) ? parsed.data : null;
  } catch {
    return null;
  }
}

/** One lesson at a time: that in which something was chosen last. A look at another takes nothing away. */
export function storeLessonProgress(
  tab: TextStorage,
  lesson: string,
  { place, chosen }: LessonProgress,
): void {
  if (chosen.length > 0) tab.write(KEY, JSON.stringify({ of: textHash(lesson), place, chosen }));
  else if (readLessonProgress(tab, lesson) !== null) tab.remove(KEY);
}
