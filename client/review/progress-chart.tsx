// How far the rack came from step to step, as a line: wins where they have been worked out, tiles to go until then.
import type { Review } from '../../shared-engine/index.ts';
import { DEEP } from './deep-strings.ts';
import { type ProgressPoint, progressDescription, roundProgress } from './round-progress.ts';

const WIDTH = 340;
const HEIGHT = 266;
const LEFT = 34;
const RIGHT = 14;
const TOP = 14;
const BOTTOM = 92;

export function ProgressChart({ review }: { readonly review: Review }) {
  const progress = roundProgress(review);
  const { kind, points } = progress;
  if (points.length < 2) return null;
  const low = Math.max(
    0,
    Math.floor(Math.min(...points.map(({ value, halfWidth }) => value - halfWidth)) - 1),
  );
  const high = Math.ceil(Math.max(...points.map(({ value, halfWidth }) => value + halfWidth)) + 1);
  const x = (place: number) => LEFT + (place * (WIDTH - LEFT - RIGHT)) / (points.length - 1);
  // Up is better: more wins, or fewer tiles to go.
  const y = (value: number) =>
    TOP + ((kind === 'wins' ? high - value : value - low) / (high - low)) * (HEIGHT - TOP - BOTTOM);
  return (
    <section class="panel round-progress" aria-labelledby="progress-title">
      <h2 id="progress-title">{kind === 'wins' ? DEEP.winsByStep : DEEP.toGoByStep}</h2>
      <p class="aside">
        {kind === 'wins' ? DEEP.winsByStepAbout : DEEP.toGoByStepAbout} {kind === 'wins' && DEEP.luckByStep}
      </p>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={progressDescription(progress)}>
        {ticks(low, high).map((tick) => (
          <g key={tick}>
            <line class="chart-grid" x1={LEFT} x2={WIDTH - RIGHT} y1={y(tick)} y2={y(tick)} />
            <text class="chart-text" x={LEFT - 10} y={y(tick) + 5} text-anchor="end">
              {tick}
            </text>
          </g>
        ))}
        <polyline
          class="chart-line"
          points={points.map((point, place) => `${x(place)},${y(point.value)}`).join(' ')}
        />
        <path class="chart-better" d={`M${LEFT + 12} ${TOP + 22} v-18 m-6 7 l6 -7 l6 7`} />
        <text class="chart-text" x={LEFT + 24} y={TOP + 14}>
          {DEEP.up}
        </text>
        {points.map((point, place) => (
          <ChartPoint key={point.name} point={point} x={x(place)} y={y} place={place} of={points.length} />
        ))}
      </svg>
    </section>
  );
}

interface ChartPointProps {
  readonly point: ProgressPoint;
  readonly x: number;
  readonly y: (value: number) => number;
  readonly place: number;
  readonly of: number;
}

function ChartPoint({ point: { name, value, halfWidth }, x, y, place, of }: ChartPointProps) {
  // Names of neighboring steps stand in four rows, or they would run into each other: the last one reaches
  // back from the edge by its whole length.
  const row = of > 3 ? (place % 4) * 18 : 0;
  return (
    <g>
      {halfWidth > 0 && (
        <line class="whisker" x1={x} x2={x} y1={y(value - halfWidth)} y2={y(value + halfWidth)} />
      )}
      <circle class="whisker-dot" cx={x} cy={y(value)} r="6" />
      <text
        class="chart-text"
        x={x}
        y={HEIGHT - 64 + row}
        text-anchor={place === 0 ? 'start' : place === of - 1 ? 'end' : 'middle'}
      >
        {name}
      </text>
    </g>
  );
}

/** Three to six whole numbers, evenly apart. */
function ticks(low: number, high: number): number[] {
  const step = [1, 2, 5, 10, 20].find((width) => (high - low) / width <= 5) ?? 25;
  const first = Math.ceil(low / step) * step;
  return Array.from({ length: Math.floor((high - first) / step) + 1 }, (_, nth) => first + nth * step);
}
