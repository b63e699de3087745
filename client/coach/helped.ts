// For which choices the coach was asked and which passes it named, so that the review tells them apart.
import { FACES, type Face, type Step } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';

/** `round/step` of each such choice, and `round/step/bam-1 bam-2 red` of each pass that was named. */
export type Helped = readonly string[];

export function wasHelped(helped: Helped, round: number, step: Step): boolean {
  return helped.includes(`${round}/${step}`);
}

/** A choice counts as helped once there is a hint to show, not when somebody asked in vain. */
export async function openHelped<Hints>(
  open: () => Promise<Hints | null>,
  onHelp: () => void,
): Promise<Hints | 'failed'> {
  try {
    const hints = await open();
    if (hints === null) return 'failed';
    onHelp();
    return hints;
  } catch {
    return 'failed';
  }
}

/** `named` are the tiles of the pass that the coach named; none before it has, nor where it is a number. */
export function withHelp(helped: Helped, round: number, step: Step, named: readonly Face[] = []): Helped {
  const mark = `${round}/${step}`;
  const marks = named.length > 0 ? [mark, `${mark}/${named.join(' ')}`] : [mark];
  const added = marks.filter((one) => !helped.includes(one));
  return added.length > 0 ? [...helped, ...added] : helped;
}

/** The pass that the coach named at this step; null where it named none. */
export function namedAt(helped: Helped, round: number, step: Step): readonly Face[] | null {
  const start = `${round}/${step}/`;
  const last = helped.findLast((mark) => mark.startsWith(start));
  if (last === undefined) return null;
  return last
    .slice(start.length)
    .split(' ')
    .flatMap((name) => FACES.find((face) => face === name) ?? []);
}

export function writeHelped(helped: Helped, key: string, tab: TextStorage): void {
  tab.write(`helped.${key}`, helped.join('\n'));
}

export function readHelped(key: string, tab: TextStorage): Helped {
  return (tab.read(`helped.${key}`) ?? '').split('\n').filter(Boolean);
}
