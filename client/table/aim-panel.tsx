// Saying one's aim before a pass: optional, closed until wanted, and never answered before the choice.
import { useSignal } from '@preact/signals';
import type { CompiledCard, MoveStep } from '../../shared-engine/index.ts';
import { AIM } from '../room/aim-strings.ts';
import { aimAt } from '../room/aims.ts';
import type { Room } from '../room/room.ts';

interface AimProps {
  readonly room: Room;
  readonly round: number;
  readonly step: MoveStep;
}

export function Aim({ room, round, step }: AimProps) {
  const { aims } = room.state.value;
  const families = useSignal<CompiledCard['families']>([]);
  const said = aimAt(aims, round, step);

  async function opened(open: boolean) {
    if (!open || families.value.length > 0) return;
    families.value = (await room.loadCard())?.families ?? [];
  }

  return (
    <details class="aim" onToggle={(event) => void opened(event.currentTarget.open)}>
      <summary>{AIM.question}</summary>
      <fieldset>
        <legend class="about">{AIM.about}</legend>
        <div class="row">
          {families.value.map(({ id, name }) => (
            <label key={id} class="choice pill">
              <input
                type="checkbox"
                checked={said.includes(id)}
                onChange={() => room.sayAim(round, step, id)}
              />
              <span>{name}</span>
            </label>
          ))}
        </div>
      </fieldset>
    </details>
  );
}
