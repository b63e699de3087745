// Numbered tiles at full size: rings for dots, jointed stalks for bams, a numeral over a crack for craks.
import type { Suit, TileNumber } from '../../shared-engine/index.ts';

interface Pattern {
  /** Half the width of one sign, in drawing units. */
  readonly size: number;
  /** Offsets from the middle of the field. */
  readonly at: readonly (readonly [number, number])[];
}

// The field is 42 wide and 52 high around (30, 46.5); the corner above it belongs to the index mark.
const PATTERNS: Readonly<Record<TileNumber, Pattern>> = {
  1: { size: 17, at: [[0, 0]] },
  2: {
    size: 11,
    at: [
      [0, -14],
      [0, 14],
    ],
  },
  3: {
    size: 8.5,
    at: [
      [-10, -17],
      [0, 0],
      [10, 17],
    ],
  },
  4: {
    size: 8.5,
    at: [
      [-10, -14],
      [10, -14],
      [-10, 14],
      [10, 14],
    ],
  },
  5: {
    size: 7.4,
    at: [
      [-11, -19],
      [11, -19],
      [0, 0],
      [-11, 19],
      [11, 19],
    ],
  },
  6: {
    size: 7.6,
    at: [
      [-10, -19],
      [10, -19],
      [-10, 0],
      [10, 0],
      [-10, 19],
      [10, 19],
    ],
  },
  7: {
    size: 6.1,
    at: [
      [-8, -19],
      [8, -19],
      [-14, 0],
      [0, 0],
      [14, 0],
      [-8, 19],
      [8, 19],
    ],
  },
  8: {
    size: 6.1,
    at: [
      [-14, -19],
      [0, -19],
      [14, -19],
      [-8, 0],
      [8, 0],
      [-14, 19],
      [0, 19],
      [14, 19],
    ],
  },
  9: {
    size: 6.1,
    at: [
      [-14, -19],
      [0, -19],
      [14, -19],
      [-14, 0],
      [0, 0],
      [14, 0],
      [-14, 19],
      [0, 19],
      [14, 19],
    ],
  },
};

const MIDDLE = { x: 30, y: 46.5 } as const;

export function SuitArt({ suit, number }: { readonly suit: Suit; readonly number: TileNumber }) {
  if (suit === 'crak') return <Crack number={number} />;
  const { size, at } = PATTERNS[number];
  return (
    <g>
      {at.map(([dx, dy]) => {
        const x = MIDDLE.x + dx;
        const y = MIDDLE.y + dy;
        const key = `${dx},${dy}`;
        return suit === 'dot' ? (
          <Ring key={key} x={x} y={y} size={size} />
        ) : (
          <Stalk key={key} x={x} y={y} size={size} />
        );
      })}
    </g>
  );
}

interface Sign {
  readonly x: number;
  readonly y: number;
  readonly size: number;
}

/** A ring with a dot; one bold ring is easier to read at arm's length than ornament. */
export function Ring({ x, y, size }: Sign) {
  return (
    <g>
      <circle class="line" cx={x} cy={y} r={size * 0.78} stroke-width={size * 0.44} />
      <circle class="fill" cx={x} cy={y} r={size * 0.26} />
    </g>
  );
}

/** One stalk with a waist, so that it counts as one and stands apart from a ring at any size. */
export function Stalk({ x, y, size }: Sign) {
  const width = Math.min(size * 0.95, 10);
  const height = size * 2;
  const notch = width * 0.16;
  return (
    <g>
      <rect
        class="fill"
        x={x - width / 2}
        y={y - height / 2}
        width={width}
        height={height}
        rx={width / 2.4}
      />
      <circle class="hole" cx={x - width / 2} cy={y} r={notch} />
      <circle class="hole" cx={x + width / 2} cy={y} r={notch} />
    </g>
  );
}

/** The line a crack makes, inside a box around (x, y). */
export function Zigzag({ x, y, size }: Sign) {
  const points = [
    [-1, 0.15],
    [-0.5, -0.45],
    [-0.15, 0.4],
    [0.3, -0.5],
    [0.6, 0.35],
    [1, -0.2],
  ]
    .map(([dx, dy]) => `${x + dx! * size},${y + dy! * size}`)
    .join(' ');
  return <polyline class="line" points={points} stroke-width={size * 0.26} />;
}

function Crack({ number }: { readonly number: TileNumber }) {
  return (
    <g>
      <text class="tile-text fill" x={MIDDLE.x} y="53" font-size="42" text-anchor="middle">
        {number}
      </text>
      <Zigzag x={MIDDLE.x} y={66} size={16} />
    </g>
  );
}
