// For which choices the coach was asked, so that the review tells them apart.
import type { Step } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';

/** `round/step` of each such choice. */
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

export function withHelp(helped: Helped, round: number, step: Step): Helped {
  return wasHelped(helped, round, step) ? helped : [...helped, `${round}/${step}`];
}

export function writeHelped(helped: Helped, key: string, tab: TextStorage): void {
  tab.write(`helped.${key}`, helped.join('\n'));
}

export function readHelped(key: string, tab: TextStorage): Helped {
  return (tab.read(`helped.${key}`) ?? '').split('\n').filter(Boolean);
}
