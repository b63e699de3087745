// What the class chose at one step, as a picture: each choice with its share and its cost, a dot with its interval.
import type { StepSpread } from '../../../shared-engine/index.ts';
import { optionName } from '../../room/step-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { percent } from '../model/strings.ts';
import { type CostFigure, costOf, costText } from './cost.ts';
import { SPREAD } from './strings.ts';

interface SpreadPictureProps {
  readonly spread: StepSpread;
  /** How many rows there is room for; all are shown without it. */
  readonly maxRows?: number;
}

export function SpreadPicture({ spread, maxRows = spread.choices.length }: SpreadPictureProps) {
  // The sentence about the others takes the last row.
  const shown = spread.choices.length > maxRows ? spread.choices.slice(0, maxRows - 1) : spread.choices;
  const others = spread.choices.slice(shown.length);
  const rows = shown.map((choice) => ({ choice, cost: costOf(choice) }));
  const scaleEnd = Math.max(0.5, ...rows.map(({ cost }) => cost?.to ?? 0));
  return (
    <div class="spread">
      {spread.best && (
        <p class="spread-best">
          <b>{SPREAD.best}:</b> <Chosen kind={spread.kind} chosen={spread.best.chosen} /> {spread.best.why}
        </p>
      )}
      {rows.length > 0 && (
        <div class="spread-row spread-head" aria-hidden="true">
          <span />
          <span />
          <span>{SPREAD.costs}</span>
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
              {cost && <CostScale cost={cost} scaleEnd={scaleEnd} />}
              <span>{spread.racks === 0 ? SPREAD.racksDiffer : costText(cost)}</span>
            </span>
          </li>
        ))}
      </ol>
      <SpreadNotes spread={spread} others={others} />
    </div>
  );
}

interface SpreadNotesProps {
  readonly spread: StepSpread;
  /** The choices there was no row for. */
  readonly others: StepSpread['choices'];
}

function SpreadNotes({ spread, others }: SpreadNotesProps) {
  const { kind, hidden, withheld, advancedWith, stoodIn, pending } = spread;
  const players = others.reduce((sum, { count }) => sum + count, 0);
  return (
    <>
      {pending > 0 && <p role="status">{SPREAD.pending}</p>}
      {others.length > 0 && <p>{SPREAD.others(others.length, players)}</p>}
      {withheld && <p>{SPREAD.withheld}</p>}
      {hidden !== undefined && <p>{SPREAD.hidden(hidden)}</p>}
      {advancedWith !== undefined && (
        <p>
          <b>{SPREAD.advancedWith}:</b> <Chosen kind={kind} chosen={advancedWith} />
        </p>
      )}
      {stoodIn > 0 && <p class="aside">{SPREAD.standIns(stoodIn)}</p>}
    </>
  );
}

interface ChosenProps {
  readonly kind: StepSpread['kind'];
  readonly chosen: StepSpread['choices'][number]['chosen'];
}

function Chosen({ kind, chosen }: ChosenProps) {
  if (typeof chosen === 'number') return <>{optionName(kind === 'pass' ? 'ask' : kind, chosen)}</>;
  if (chosen.length === 0) return SPREAD.blind;
  return <TileRow tiles={chosen} />;
}

const WIDTH = 200;
const MARGIN = 10;

function CostScale({ cost, scaleEnd }: { readonly cost: CostFigure; readonly scaleEnd: number }) {
  const x = (value: number) => MARGIN + (Math.max(0, value) / scaleEnd) * (WIDTH - 2 * MARGIN);
  return (
    <svg class="cost-scale" viewBox={`0 0 ${WIDTH} 24`} aria-hidden="true" focusable="false">
      <line class="cost-zero" x1={x(0)} x2={x(0)} y1="0" y2="24" />
      <path
        class="cost-interval"
        d={`M${x(cost.from)} 12 H${x(cost.to)} M${x(cost.from)} 7 V17 M${x(cost.to)} 7 V17`}
      />
      <circle class="cost-dot" cx={x(cost.value)} cy="12" r="6" />
    </svg>
  );
}
