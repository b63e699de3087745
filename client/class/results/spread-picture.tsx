// What the class chose at one step, as a picture: the best and why, then each choice, how many made it, and its cost.
import type { StepSpread } from '../../../shared-engine/index.ts';
import { optionName } from '../../room/step-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { type CostFigure, costText, scaleEndOf } from './cost.ts';
import { rowsWithin, type SpreadRow } from './spread-rows.ts';
import { ofPlayers, SPREAD } from './strings.ts';

interface SpreadPictureProps {
  readonly spread: StepSpread;
  /** How many rows there is room for; all are shown without it. */
  readonly maxRows?: number;
}

export function SpreadPicture({ spread, maxRows = Number.POSITIVE_INFINITY }: SpreadPictureProps) {
  const { shown, others } = rowsWithin(spread, maxRows);
  const costs = shown.flatMap(({ cost }) => cost ?? []);
  const scaleEnd = scaleEndOf(costs);
  return (
    <div class="spread">
      {spread.best && (
        <p class="spread-best">
          <b>{SPREAD.best}:</b> <Chosen kind={spread.kind} chosen={spread.best.chosen} /> {spread.best.why}
        </p>
      )}
      {spread.racks === 0 && <p class="aside">{SPREAD.racksDiffer}</p>}
      {costs.length > 0 && (
        <div class="spread-row spread-axis-row" aria-hidden="true">
          <span />
          <span />
          <span class="spread-cost">
            <span class="spread-axis">
              <span>{SPREAD.axisStart}</span>
              <span>{SPREAD.axisEnd(scaleEnd)}</span>
            </span>
            <span class="spread-unit">{SPREAD.axisUnit}</span>
          </span>
        </div>
      )}
      <ol>
        {shown.map((row) => (
          <Row key={String(row.chosen)} row={row} spread={spread} scaleEnd={scaleEnd} />
        ))}
      </ol>
      <SpreadNotes spread={spread} others={others} />
    </div>
  );
}

interface RowProps {
  readonly row: SpreadRow;
  readonly spread: StepSpread;
  readonly scaleEnd: number;
}

function Row({ row: { chosen, count, share, cost, isBest }, spread, scaleEnd }: RowProps) {
  const { kind, racks, players } = spread;
  return (
    <li class={isBest ? 'spread-row best' : 'spread-row'}>
      <span class="spread-choice">
        <Chosen kind={kind} chosen={chosen} />
      </span>
      <span class="spread-share">
        <span>{ofPlayers(count, players)}</span>
        <span class="spread-bar">
          <svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true" focusable="false">
            <rect class="share-bar" width={share * 100} height="10" />
          </svg>
        </span>
      </span>
      <span class="spread-cost">
        {cost ? <CostScale cost={cost} scaleEnd={scaleEnd} /> : <span />}
        {racks > 0 && <span>{isBest ? SPREAD.isBest : costText(cost)}</span>}
      </span>
    </li>
  );
}

interface SpreadNotesProps {
  readonly spread: StepSpread;
  /** The choices there was no row for. */
  readonly others: readonly SpreadRow[];
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

/** Room at both ends of the scale, in percent. */
const MARGIN = 4;

function CostScale({ cost, scaleEnd }: { readonly cost: CostFigure; readonly scaleEnd: number }) {
  const x = (value: number) => `${MARGIN + (Math.max(0, value) / scaleEnd) * (100 - 2 * MARGIN)}%`;
  const [from, to] = [x(cost.from), x(cost.to)];
  return (
    <svg class="cost-scale" aria-hidden="true" focusable="false">
      <line class="cost-zero" x1={x(0)} x2={x(0)} y1="0" y2="100%" />
      <line class="cost-interval" x1={from} x2={to} y1="50%" y2="50%" />
      <line class="cost-interval" x1={from} x2={from} y1="25%" y2="75%" />
      <line class="cost-interval" x1={to} x2={to} y1="25%" y2="75%" />
      <circle class="cost-dot" cx={x(cost.value)} cy="50%" r="0.28em" />
    </svg>
  );
}
