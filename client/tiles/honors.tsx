// Winds, dragons, flower and joker, each with an outline of its own.
import type { Dragon, Wind } from '../../shared-engine/index.ts';

const WIND_MARKS: Readonly<Record<Wind, { readonly letter: string; readonly pointer: string }>> = {
  north: { letter: 'N', pointer: '30,6 38,16 22,16' },
  east: { letter: 'E', pointer: '55,40 45,48 45,32' },
  south: { letter: 'S', pointer: '30,74 38,64 22,64' },
  west: { letter: 'W', pointer: '5,40 15,48 15,32' },
};

/** The letter, and a pointer at the edge that the wind blows from on a map. */
export function WindArt({ wind }: { readonly wind: Wind }) {
  const { letter, pointer } = WIND_MARKS[wind];
  const wide = wind === 'west' || wind === 'east';
  const x = wind === 'west' ? 34 : wind === 'east' ? 25 : 30;
  return (
    <g class="fill">
      <polygon points={pointer} />
      <text class="tile-text" x={x} y="54" font-size={wide ? 36 : 40} text-anchor="middle">
        {letter}
      </text>
    </g>
  );
}

export function DragonArt({ dragon }: { readonly dragon: Dragon }) {
  switch (dragon) {
    case 'green':
      return <Climber />;
    case 'red':
      return <Coil />;
    case 'white':
      return <Soap />;
  }
}

/** Climbs upward: an open S with a leaf for a head. */
function Climber() {
  return (
    <g>
      <path class="line" d="M14 66 C40 70 52 54 36 45 C20 36 20 26 34 22" stroke-width="8" />
      <path class="fill" d="M32 12 C42 8 52 12 55 21 C47 29 38 30 31 30 Z" />
      <circle class="hole" cx="43" cy="18" r="2.6" />
      <path class="fill" d="M22 45 l-9 -4 4 10z M27 30 l-11 -2 7 8z M46 62 l9 5 -12 3z" />
    </g>
  );
}

/** Curled up with a tongue of fire: a closed coil. */
function Coil() {
  return (
    <g>
      <path
        class="line"
        d="M33 50 c-5 -6 3 -13 10 -8 c9 7 3 24 -12 23 c-16 -1 -21 -21 -8 -31"
        stroke-width="7.500"
      />
      <path
        class="fill"
        d="M16 38 C16 22 30 24 30 8 C36 14 37 19 35 23 C40 22 42 18 42 14 C50 24 44 36 30 36 Z"
      />
    </g>
  );
}

/** A bar of soap with bubbles; it also stands for zero. */
function Soap() {
  return (
    <g>
      <rect class="line" x="14" y="23" width="32" height="42" rx="9" stroke-width="5" />
      <circle class="line" cx="26" cy="39" r="4.500" stroke-width="2.600" />
      <circle class="line" cx="35" cy="49" r="3" stroke-width="2.400" />
      <circle class="fill" cx="25" cy="53" r="2" />
    </g>
  );
}

export function FlowerArt() {
  return (
    <g>
      {[0, 60, 120, 180, 240, 300].map((angle) => (
        <ellipse
          key={angle}
          class="fill"
          cx="30"
          cy="31"
          rx="7.500"
          ry="11"
          transform={`rotate(${angle} 30 45)`}
        />
      ))}
      <circle class="hole" cx="30" cy="45" r="7.500" />
      <circle class="fill" cx="30" cy="45" r="4.500" />
    </g>
  );
}

const BURST = Array.from({ length: 16 }, (_, corner) => {
  const angle = (corner * Math.PI) / 8;
  const reach = corner % 2 === 0 ? 28 : 20.5;
  return `${(30 + reach * 0.95 * Math.sin(angle)).toFixed(1)},${(40 - reach * 1.18 * Math.cos(angle)).toFixed(1)}`;
}).join(' ');

/** Stands for anything, so it shines in every direction. */
export function JokerArt() {
  return (
    <g>
      <polygon class="fill" points={BURST} />
      <text class="tile-text hole" x="30" y="53" font-size="36" text-anchor="middle">
        J
      </text>
    </g>
  );
}
