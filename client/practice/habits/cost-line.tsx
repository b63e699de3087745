// The cost of choices a round as a line with its intervals, and luck beside it.
import type { LedgerLine, LedgerMeans } from '../../../shared-engine/index.ts';
import { COST_LINE, costWords, leftOutWords, lineDescription, meansWords } from './cost-line-strings.ts';

const WIDTH = 340;
const HEIGHT = 200;
const LEFT = 36;
const RIGHT = 14;
const TOP = 12;
const BOTTOM = 32;
/** Luck stands so far beside the cost, so that neither hides the other. */
const BESIDE = 5;

export function CostLine({ line }: { readonly line: LedgerLine }) {
  const leftOut = leftOutWords(line);
  return (
    <section class="round-group" aria-labelledby="cost-line-title">
      <h2 id="cost-line-title">{COST_LINE.title}</h2>
      <p>{costWords(line)}</p>
      {leftOut && <p class="aside">{leftOut}</p>}
      {line.points.length > 0 && (
        <>
          <p class="aside">{COST_LINE.about}</p>
          <Chart line={line} />
          <Legend />
          <details class="panel">
            <summary>{COST_LINE.numbers}</summary>
            <Numbers points={line.points} />
          </details>
        </>
      )}
    </section>
  );
}

function Chart({ line }: { readonly line: LedgerLine }) {
  const { points } = line;
  const ends = points.flatMap(({ cost, luck }) => [
    cost.value - cost.halfWidth,
    cost.value + cost.halfWidth,
    luck.value,
  ]);
  const low = Math.min(0, Math.floor(Math.min(...ends)));
  const high = Math.max(1, Math.ceil(Math.max(...ends)));
  const x = (nth: number) => LEFT + ((nth + 0.5) * (WIDTH - LEFT - RIGHT)) / points.length;
  const y = (value: number) => TOP + ((high - value) / (high - low)) * (HEIGHT - TOP - BOTTOM);
  return (
    <svg class="cost-line" viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={lineDescription(line)}>
      {[...new Set([low, 0, high])].map((tick) => (
        <g key={tick}>
          <line class="cost-line-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y(tick)} y2={y(tick)} />
          <text x={LEFT - 8} y={y(tick) + 5} text-anchor="end">
            {String(tick).replace('-', '−')}
          </text>
        </g>
      ))}
      <polyline
        class="cost-line-luck"
        points={points.map(({ luck }, nth) => `${x(nth) + BESIDE},${y(luck.value)}`).join(' ')}
      />
      <polyline
        class="cost-line-cost"
        points={points.map(({ cost }, nth) => `${x(nth)},${y(cost.value)}`).join(' ')}
      />
      {points.map(({ from, cost, luck }, nth) => (
        <g key={from}>
          <line
            class="cost-line-interval"
            x1={x(nth)}
            x2={x(nth)}
            y1={y(cost.value - cost.halfWidth)}
            y2={y(cost.value + cost.halfWidth)}
          />
          <circle class="cost-line-dot" cx={x(nth)} cy={y(cost.value)} r="5" />
          <rect class="cost-line-square" x={x(nth) + BESIDE - 4} y={y(luck.value) - 4} width="8" height="8" />
        </g>
      ))}
      <text x={LEFT} y={HEIGHT - 8}>
        {COST_LINE.earlier}
      </text>
      <text x={WIDTH - RIGHT} y={HEIGHT - 8} text-anchor="end">
        {COST_LINE.latest}
      </text>
    </svg>
  );
}

function Legend() {
  return (
    <p class="cost-line-legend">
      <span>
        <svg class="cost-line" viewBox="0 0 28 12" aria-hidden="true">
          <line class="cost-line-cost" x1="1" x2="27" y1="6" y2="6" />
          <circle class="cost-line-dot" cx="14" cy="6" r="5" />
        </svg>
        {COST_LINE.cost}
      </span>
      <span>
        <svg class="cost-line" viewBox="0 0 28 12" aria-hidden="true">
          <line class="cost-line-luck" x1="1" x2="27" y1="6" y2="6" />
          <rect class="cost-line-square" x="10" y="2" width="8" height="8" />
        </svg>
        {COST_LINE.luck}
      </span>
    </p>
  );
}

function Numbers({ points }: { readonly points: readonly LedgerMeans[] }) {
  return (
    <table class="habit-numbers">
      <thead>
        <tr>
          <th scope="col">{COST_LINE.rounds}</th>
          <th scope="col">{COST_LINE.cost}</th>
          <th scope="col">{COST_LINE.luck}</th>
        </tr>
      </thead>
      <tbody>
        {points.map(({ from, rounds, cost, luck }) => (
          <tr key={from}>
            <th scope="row">{`${from} to ${from + rounds - 1}`}</th>
            <td>{meansWords(cost)}</td>
            <td>{meansWords(luck)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
