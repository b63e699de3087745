// All alternatives on one scale: a dot each, the best ringed, the player's own filled and named.
import { REVIEW } from './strings.ts';

interface ScaleProps {
  /** Nearness of each alternative; higher is better. */
  readonly values: readonly number[];
  readonly played: number;
  readonly best: number;
  /** The same in words, for those who do not see it. */
  readonly words: string;
}

const WIDTH = 320;
const EDGE = 26;
/** A narrower spread than this, in tiles, is drawn no wider, or nothing would look like much. */
const LEAST_SPREAD = 1;

export function Scale({ values, played, best, words }: ScaleProps) {
  const top = Math.max(best, played, ...values);
  const bottom = Math.min(top - LEAST_SPREAD, played, ...values);
  const x = (value: number) => EDGE + ((value - bottom) / (top - bottom)) * (WIDTH - 2 * EDGE);
  const together = Math.abs(x(best) - x(played)) < 30;
  return (
    <div class="scale">
      <svg viewBox={`0 0 ${WIDTH} 62`} role="img" aria-label={words}>
        <line class="scale-line" x1={EDGE - 8} x2={WIDTH - EDGE + 8} y1="34" y2="34" />
        {values.map((value, index) => (
          <circle key={`${index}-${value}`} class="scale-dot" cx={x(value)} cy="34" r="4.500" />
        ))}
        <circle class="scale-best" cx={x(best)} cy="34" r="9" />
        <path class="scale-own" d={`M${x(played)} 26 l8 8 l-8 8 l-8 -8 z`} />
        {together ? (
          <text class="scale-text" x={WIDTH - EDGE + 12} y="16" text-anchor="end">
            {best === played ? REVIEW.both : `${REVIEW.you} · ${REVIEW.best}`}
          </text>
        ) : (
          <>
            <text class="scale-text" x={x(best) + 12} y="16" text-anchor="end">
              {REVIEW.best}
            </text>
            <text class="scale-text" x={Math.max(14, x(played))} y="16" text-anchor="middle">
              {REVIEW.you}
            </text>
          </>
        )}
      </svg>
      <p class="scale-ends" aria-hidden="true">
        <span>{REVIEW.farther}</span>
        <span>{REVIEW.closer}</span>
      </p>
    </div>
  );
}
