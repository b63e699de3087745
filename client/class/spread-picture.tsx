// The spread of one step as a picture: each choice with its share of the class and what it costs, dot and whiskers.
import type { StepSpread } from '../../shared-engine/index.ts';
import { optionName } from '../room/option-names.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { LINE } from './guided-strings.ts';
import { type CostFigure, commonUnit, costOf, costWords } from './spread-strings.ts';
import { percent, WALL } from './strings.ts';

interface SpreadPictureProps {
  readonly spread: StepSpread;
  /** Rows that there is room for; without it all are shown. */
  readonly most?: number;
}

export function SpreadPicture({ spread, most = spread.choices.length }: SpreadPictureProps) {
  const unit = commonUnit(spread.choices);
  // A last row is worth no more than the line that says there are others.
  const shown = spread.choices.length > most ? spread.choices.slice(0, most - 1) : spread.choices;
  const others = spread.choices.slice(shown.length);
  const rows = shown.map((choice) => ({ choice, cost: costOf(choice, unit) }));
  const reach = Math.max(0.5, ...rows.map(({ cost }) => cost?.to ?? 0));
  return (
    <div class="spread">
      {rows.length > 0 && (
        <div class="spread-row spread-head" aria-hidden="true">
          <span />
          <span />
          <span>{WALL.cost}</span>
        </div>
      )}
      <ol>
        {rows.map(({ choice, cost }) => (
          <li key={String(choice.chosen)} class="spread-row">
            <span class="spread-choice">
              <Chosen kind={spread.kind} chosen={choice.chosen} />
            </span>
            <span class="spread-share">
              <span class="spread-bar">
                <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" focusable="false">
                  <rect class="share-bar" width={choice.share * 100} height="10" />
                </svg>
              </span>
              {percent(choice.share)} ({choice.count})
            </span>
            <span class="spread-cost">
              {cost && <Whisker cost={cost} reach={reach} />}
              <span>{costWords(cost)}</span>
            </span>
          </li>
        ))}
      </ol>
      {others.length > 0 && (
        <p class="spread-others">
          {WALL.others(
            others.length,
            others.reduce((sum, { count }) => sum + count, 0),
          )}
        </p>
      )}
      {spread.hidden !== undefined && <p class="spread-others">{WALL.unshown(spread.hidden)}</p>}
      {spread.advancedWith !== undefined && (
        <p class="spread-line">
          <b>{LINE.wentOn}:</b> <Chosen kind={spread.kind} chosen={spread.advancedWith} />
        </p>
      )}
      {spread.stoodIn > 0 && <p class="aside">{WALL.stoodIn(spread.stoodIn)}</p>}
    </div>
  );
}

interface ChosenProps {
  readonly kind: StepSpread['kind'];
  readonly chosen: StepSpread['choices'][number]['chosen'];
}

function Chosen({ kind, chosen }: ChosenProps) {
  if (typeof chosen === 'number') return <>{optionName(kind === 'pass' ? 'ask' : kind, chosen)}</>;
  if (chosen.length === 0) return WALL.unseen;
  return <TileRow tiles={chosen} />;
}

const WIDTH = 200;
const EDGE = 10;

function Whisker({ cost, reach }: { readonly cost: CostFigure; readonly reach: number }) {
  const x = (value: number) => EDGE + (Math.max(0, value) / reach) * (WIDTH - 2 * EDGE);
  return (
    <svg class="cost-scale" viewBox={`0 0 ${WIDTH} 24`} aria-hidden="true" focusable="false">
      <line class="cost-zero" x1={x(0)} x2={x(0)} y1="0" y2="24" />
      <path
        class="cost-whisker"
        d={`M${x(cost.from)} 12 H${x(cost.to)} M${x(cost.from)} 7 V17 M${x(cost.to)} 7 V17`}
      />
      <circle class="cost-dot" cx={x(cost.value)} cy="12" r="6" />
    </svg>
  );
}
