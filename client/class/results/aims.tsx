// Which sections of the card the players said they aimed at before a step, each with how many did.
import type { StepSpread } from '../../../shared-engine/index.ts';
import { SPREAD } from './strings.ts';

interface AimsProps {
  readonly aims: StepSpread['aims'];
  /** Names of the sections by id. */
  readonly names: Readonly<Record<string, string>>;
}

/** Nothing where nobody named an aim. */
export function Aims({ aims, names }: AimsProps) {
  if (aims.length === 0) return null;
  return (
    <p>
      <b>{SPREAD.aims}:</b>{' '}
      {aims.map(({ section, count }) => `${names[section] ?? section} (${count})`).join(' · ')}
    </p>
  );
}
