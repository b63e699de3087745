// Which sections of the card the players said they aimed at before a step, each with its share.
import type { StepSpread } from '../../../shared-engine/index.ts';
import { percent } from '../model/strings.ts';
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
      {aims.map(({ section, share }) => `${names[section] ?? section} ${percent(share)}`).join(' · ')}
    </p>
  );
}
