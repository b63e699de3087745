// Choosing an aim before a pass: optional, folded until it is opened, and commented on only in the review.
import { useSignal } from '@preact/signals';
import type { CompiledCard, MoveStep } from '../../shared-engine/index.ts';
import { aimsAt } from '../room/aims.ts';
import type { Room } from '../room/room.ts';
import { AIM } from './strings.ts';

interface AimPanelProps {
  readonly room: Room;
  readonly round: number;
  readonly step: MoveStep;
}

export function AimPanel({ room, round, step }: AimPanelProps) {
  const { aims } = room.state.value;
  const sections = useSignal<CompiledCard['sections']>([]);
  const chosen = aimsAt(aims, round, step);

  async function opened(open: boolean) {
    if (!open || sections.value.length > 0) return;
    sections.value = (await room.loadCard())?.sections ?? [];
  }

  return (
    <details class="aim" onToggle={(event) => void opened(event.currentTarget.open)}>
      <summary>{AIM.question}</summary>
      <fieldset>
        <legend class="about">{AIM.about}</legend>
        <div class="row">
          {sections.value.map(({ id, name }) => (
            <label key={id} class="choice pill">
              <input
                type="checkbox"
                checked={chosen.includes(id)}
                onChange={() => room.toggleAim(round, step, id)}
              />
              <span>{name}</span>
            </label>
          ))}
        </div>
      </fieldset>
    </details>
  );
}
