// One tile as a picture: our own drawing, 60 × 80 units, full or pared down for small sizes.
import type { ComponentChildren } from 'preact';
import { type Face, numbered, type Suit, type TileNumber } from '../../shared-engine/index.ts';
import { DragonArt, FlowerArt, JokerArt, WindArt } from './honors.tsx';
import { inkOf } from './ink.ts';
import { Ring, Stalk, SuitArt, Zigzag } from './pips.tsx';

interface TileProps {
  readonly face: Face;
  /** Below about 40 px wide: one big numeral and one suit sign instead of the full pattern. */
  readonly small?: boolean;
}

/** Silent for assistive technology: whoever shows a tile also names it. */
export function Tile({ face, small = false }: TileProps) {
  const suited = numbered(face);
  return (
    <Blank ink={inkOf(face)}>
      {suited ? (
        small ? (
          <SmallSuit suit={suited.suit} number={suited.number} />
        ) : (
          <>
            <Index mark={String(suited.number)} />
            <SuitArt suit={suited.suit} number={suited.number} />
          </>
        )
      ) : (
        <Honour face={face} />
      )}
    </Blank>
  );
}

/** The back of a tile that nobody has looked at. */
export function TileBack() {
  return (
    <svg class="tile-art tile-back" viewBox="0 0 60 80" aria-hidden="true" focusable="false">
      <rect class="tile-body" x="1.500" y="1.500" width="57" height="77" rx="9" />
      <path class="line" d="M12 20 L48 60 M12 60 L48 20" stroke-width="3" />
      <circle class="line" cx="30" cy="40" r="12" stroke-width="3" />
    </svg>
  );
}

function Blank({ ink, children }: { readonly ink: string; readonly children: ComponentChildren }) {
  return (
    <svg class={`tile-art ${ink}`} viewBox="0 0 60 80" aria-hidden="true" focusable="false">
      <rect class="tile-body" x="1.500" y="1.500" width="57" height="77" rx="9" />
      {children}
    </svg>
  );
}

function Index({ mark }: { readonly mark: string }) {
  return (
    <text class="tile-text tile-index fill" x="5" y="19" font-size="18">
      {mark}
    </text>
  );
}

function SmallSuit({ suit, number }: { readonly suit: Suit; readonly number: TileNumber }) {
  return (
    <g>
      <text class="tile-text fill" x="30" y="45" font-size="48" text-anchor="middle">
        {number}
      </text>
      {suit === 'dot' && <Ring x={30} y={62} size={11} />}
      {suit === 'bam' && (
        <>
          <Stalk x={20} y={62} size={10} />
          <Stalk x={40} y={62} size={10} />
        </>
      )}
      {suit === 'crak' && <Zigzag x={30} y={63} size={21} />}
    </g>
  );
}

function Honour({ face }: { readonly face: Face }) {
  switch (face) {
    case 'east':
    case 'south':
    case 'west':
    case 'north':
      return <WindArt wind={face} />;
    case 'green':
      return <Marked mark="G">{<DragonArt dragon={face} />}</Marked>;
    case 'red':
      return <Marked mark="R">{<DragonArt dragon={face} />}</Marked>;
    case 'white':
      return <Marked mark="0">{<DragonArt dragon={face} />}</Marked>;
    case 'flower':
      return (
        <Marked mark="F">
          <FlowerArt />
        </Marked>
      );
    default:
      return <JokerArt />;
  }
}

function Marked({ mark, children }: { readonly mark: string; readonly children: ComponentChildren }) {
  return (
    <>
      <Index mark={mark} />
      {children}
    </>
  );
}
