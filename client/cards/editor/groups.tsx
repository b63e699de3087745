// A hand as its groups: how many of which tile in the example, and what each one means.
import type { CardTile, PatternReport } from '../../../shared-engine/index.ts';
import { Tile } from '../../tiles/tile.tsx';
import { tileName } from '../../tiles/tile-names.ts';
import { kindsOf, meaningOf, type Shown } from './meaning.ts';
import { ASK_ONE, HAND } from './strings.ts';

interface GroupsProps {
  readonly shown: Shown;
  readonly report: PatternReport;
  readonly chosen: number | null;
  readonly onChoose: (nth: number | null) => void;
}

export function Groups({ shown, report, chosen, onChoose }: GroupsProps) {
  const wrong = new Set(report.problems.map(({ group }) => group));
  return (
    <ol class="hand-groups">
      {shown.pattern.groups.map(({ size, tile }, nth) => {
        const face = shown.faces[nth] ?? 'flower';
        return (
          <li key={`${nth}-${face}`}>
            <button
              type="button"
              class={wrong.has(nth + 1) ? 'hand-group wrong' : 'hand-group'}
              aria-pressed={chosen === nth}
              aria-label={HAND.group(nth + 1, size, tileName(face), meaningText(tile))}
              onClick={() => onChoose(chosen === nth ? null : nth)}
            >
              <span class="group-size" aria-hidden="true">
                {size} ×
              </span>
              <Tile face={face} small />
              <span class="group-mark" aria-hidden="true">
                {markOf(tile)}
              </span>
            </button>
          </li>
        );
      })}
    </ol>
  );
}

/** What stands under the tile for whoever knows the shorthand. */
function markOf(tile: CardTile): string {
  if ('number' in tile && typeof tile.number === 'object') {
    const { var: name, plus = 0 } = tile.number;
    return plus === 0 ? name : `${name}${plus > 0 ? '+' : '−'}${Math.abs(plus)}`;
  }
  if ('zero' in tile) return '0';
  if ('yearDigit' in tile) return `y${tile.yearDigit + 1}`;
  if ('dragon' in tile && typeof tile.dragon === 'object') return 'matching' in tile.dragon ? 'match' : 'any';
  return 'wind' in tile && typeof tile.wind === 'object' ? 'any' : '';
}

function meaningText(tile: CardTile): string {
  const meaning = meaningOf(tile);
  return kindsOf(tile)
    .map((kind) => `${ASK_ONE[kind].title.toLowerCase()} ${answerText(kind, meaning)}`)
    .join(', ');
}

function answerText(kind: keyof ReturnType<typeof meaningOf>, meaning: ReturnType<typeof meaningOf>): string {
  const answers: Readonly<Record<string, string>> = ASK_ONE[kind].answers;
  return answers[meaning[kind]] ?? '';
}
