// Choosing an aim before a pass: optional, folded until it is opened, and commented on only in the review.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CompiledCard, MoveStep } from '../../shared-engine/index.ts';
import { aimsAt, MAX_AIMS } from '../room/aims.ts';
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
  const askedThird = useSignal(false);
  const chosen = aimsAt(aims, round, step);
  const names = sections.value.filter(({ id }) => chosen.includes(id)).map(({ name }) => name);

  async function loadSections() {
    if (sections.value.length === 0) sections.value = (await room.loadCard())?.sections ?? [];
  }
  // An aim said before a reload is shown on the fold too.
  useEffect(() => {
    if (chosen.length > 0) void loadSections();
  }, []);

  function toggle(input: HTMLInputElement, id: string) {
    askedThird.value = chosen.length >= MAX_AIMS && !chosen.includes(id);
    if (askedThird.value) input.checked = false;
    else room.toggleAim(round, step, id);
  }

  return (
    <details class="aim" onToggle={(event) => event.currentTarget.open && void loadSections()}>
      <summary>{names.length > 0 ? AIM.aimed(names) : AIM.question}</summary>
      <fieldset>
        <legend class="about">{AIM.about}</legend>
        <div class="row">
          {sections.value.map(({ id, name }) => (
            <label key={id} class="choice pill">
              <input
                type="checkbox"
                checked={chosen.includes(id)}
                onChange={(event) => toggle(event.currentTarget, id)}
              />
              <span>{name}</span>
            </label>
          ))}
        </div>
        <p class="notice" role="status">
          {askedThird.value ? AIM.enough : null}
        </p>
      </fieldset>
    </details>
  );
}
