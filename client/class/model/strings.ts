// What all screens of a class say alike: steps, deals, players and shares.
import type { Step, StepSpread } from '../../../shared-engine/index.ts';
import { STEP_NAMES } from '../../room/step-names.ts';

export const CLASS = {
  ofSeat: (seat: number) => `Seat ${seat + 1}: `,
  opening: 'Opening the class…',
  gone: 'There is no class with this code.',
  goneAbout: 'Check the eight letters and digits with your teacher.',
  deleted: 'This class was deleted, or its time was over. Nothing of it is stored on the server any more.',
  notYours: 'Only a teacher of this class can show this page; a teacher’s key opens it here.',
  ended: 'This class has ended.',
  dealNumber: (number: number, of: number) => `Deal ${number} of ${of}`,
} as const;

export const TEACHING = { title: 'My classes and drills' } as const;

/** A day as this device writes it: `Nov 26, 2026`. */
export function dayText(time: number): string {
  return new Date(time).toLocaleDateString(undefined, { dateStyle: 'medium' });
}

/** A day for files: `2026-11-26`, by the clock of this device. */
export function dateAt(time: number): string {
  const day = new Date(time);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}

/** The end of this day by the clock of this device, in milliseconds since 1970; null where it is no day. */
export function endOfDay(date: string): number | null {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(date) ?? [];
  if (year === undefined) return null;
  return new Date(Number(year), Number(month) - 1, Number(day) + 1).getTime();
}

export function dealCount(count: number): string {
  return count === 1 ? '1 deal' : `${count} deals`;
}

export function stepTitle(step: Step): string {
  return step === 'vote' ? 'Vote on a second Charleston' : STEP_NAMES[step];
}

/** The step in the middle of a sentence: `first across`. */
export function stepInSentence(step: Step): string {
  return step === 'vote' ? 'the vote on a second Charleston' : STEP_NAMES[step].toLowerCase();
}

/** A step and what is chosen there: how many tiles go blind is a choice apart from the pass itself. */
export function choiceTitle({ kind, step }: Pick<StepSpread, 'kind' | 'step'>): string {
  return kind === 'blind' ? `${stepTitle(step)}: tiles passed blind` : stepTitle(step);
}

export function playerCount(count: number): string {
  return count === 1 ? '1 player' : `${count} players`;
}
