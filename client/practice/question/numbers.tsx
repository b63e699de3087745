// A few numbers of which one is chosen.
import { PASS_SIZE } from '../../../shared-engine/index.ts';

interface NumbersProps {
  /** Tells it from other choices on the screen. */
  readonly name: string;
  readonly legend: string;
  readonly value: number;
  readonly label: (value: number) => string;
  readonly onChange: (value: number) => void;
}

const UP_TO_THREE = Array.from({ length: PASS_SIZE + 1 }, (_, count) => count);

export function Numbers({ name, legend, value, label, onChange }: NumbersProps) {
  return (
    <fieldset>
      <legend>{legend}</legend>
      <div class="row">
        {UP_TO_THREE.map((one) => (
          <label key={one} class="choice pill">
            <input type="radio" name={name} checked={value === one} onChange={() => onChange(one)} />
            <span>{label(one)}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
