// The whole set as buttons, one row a suit, and what has been laid from it; a tile that cannot be laid says why.
import { useSignal } from '@preact/signals';
import {
  type Bag,
  bagOf,
  copiesLeft,
  countOf,
  FACES,
  type Face,
  type LaidProblem,
} from '../../shared-engine/index.ts';
import { laidOf, laidProblemWords, PICKER, pickName } from './picker-strings.ts';
import './picker.css';
import { Tile } from './tile.tsx';
import { tileName } from './tile-names.ts';

interface TilePickerProps {
  /** What the laid tiles are called. */
  readonly title: string;
  readonly laid: readonly Face[];
  /** How many tiles are to be laid. */
  readonly size: number;
  /** Tiles that lie elsewhere already, so that fewer of them are left. */
  readonly beside?: Bag;
  /** Why these tiles cannot lie here; null where they can. */
  readonly problemWith: (tiles: readonly Face[]) => LaidProblem | null;
  readonly onChange: (laid: readonly Face[]) => void;
}

export function TilePicker({ title, laid, size, beside, problemWith, onChange }: TilePickerProps) {
  const said = useSignal<string | null>(null);
  const taken = bagOf(laid).map((count, face) => count + (beside?.[face] ?? 0));
  const left = copiesLeft(taken);
  const change = (tiles: readonly Face[]) => {
    said.value = null;
    onChange(tiles);
  };
  return (
    <div class="tile-picker">
      <section aria-label={title}>
        <p class="picker-head">
          <b>{title}</b> <span role="status">{laidOf(laid.length, size)}</span>
        </p>
        <ul class="pick-rack laid-tiles">
          {laid.map((face, place) => (
            <li key={`${place}-${face}`}>
              <button
                type="button"
                aria-label={tileName(face)}
                onClick={() => change(laid.filter((_, other) => other !== place))}
              >
                <Tile face={face} small />
              </button>
            </li>
          ))}
        </ul>
      </section>
      <p class={said.value ? 'notice' : 'aside'} role="status">
        {said.value ?? PICKER.tap}
      </p>
      <ul class="tile-set" aria-label={PICKER.set}>
        {FACES.map((face) => {
          const copies = countOf(left, face);
          const next = [...laid, face];
          const problem = problemWith(next);
          // Too few tiles are no fault while they are laid.
          const isOff = problem !== null && (problem.tile !== null || next.length > size);
          return (
            <li key={face}>
              <button
                type="button"
                class="set-tile"
                aria-label={pickName(tileName(face), copies)}
                aria-disabled={isOff}
                onClick={() => {
                  if (isOff) said.value = laidProblemWords(problem);
                  else change(next);
                }}
              >
                <Tile face={face} small />
                <span class="copies" aria-hidden="true">
                  {copies}
                </span>
              </button>
            </li>
          );
        })}
      </ul>
    </div>
  );
}
