// One tile as a picture: our own drawing, 60 × 80 units, full or pared down for small sizes.
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
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
  // The same drawing is not compared again, shape by shape, whenever something else on the page changes.
  return useMemo(() => drawnTile(face, small), [face, small]);
}

function drawnTile(face: Face, small: boolean) {
  const suited = numbered(face);
  return (
    <Blank ink={inkOf(face)}>
      {suited ? (
        small ? (
          <Art>
            <SmallSuit suit={suited.suit} number={suited.number} />
          </Art>
        ) : (
          <>
            <Index mark={String(suited.number)} />
            <Art>
              <SuitArt suit={suited.suit} number={suited.number} />
            </Art>
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
  return useMemo(
    () => (
      <svg class="tile-art tile-back" viewBox="0 0 60 80" aria-hidden="true" focusable="false">
        <Body />
        <path class="line" d="M14 18 L46 55 M14 55 L46 18" stroke-width="2.500" />
        <circle class="line" cx="30" cy="36.500" r="11" stroke-width="2.500" />
      </svg>
    ),
    [],
  );
}

/** The place of a tile that is not drawn yet. */
export function TileToCome() {
  return <svg class="tile-art" viewBox="0 0 60 80" aria-hidden="true" focusable="false" />;
}

function Blank({ ink, children }: { readonly ink: string; readonly children: ComponentChildren }) {
  return (
    <svg class={`tile-art ${ink}`} viewBox="0 0 60 80" aria-hidden="true" focusable="false">
      <Body />
      {children}
    </svg>
  );
}

/** A slab seen a little from above: its side below, its face, and the light along the upper edge. */
function Body() {
  return (
    <>
      <rect class="tile-side" x="1.500" y="8" width="57" height="70.500" rx="9" />
      <rect class="tile-body" x="1.500" y="1.500" width="57" height="70.500" rx="9" />
      <path class="tile-light" d="M9 4.200 H51 A5 5 0 0 1 55.800 9" />
    </>
  );
}

/** The drawing, scaled onto the face and clear of the index mark. */
function Art({ children }: { readonly children: ComponentChildren }) {
  return <g transform="translate(2.400 -0.400) scale(0.92)">{children}</g>;
}

function Index({ mark }: { readonly mark: string }) {
  return (
    <text class="tile-text tile-index fill" x="5.500" y="18" font-size="17">
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
      return (
        <Art>
          <WindArt wind={face} />
        </Art>
      );
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
      return (
        <Art>
          <JokerArt />
        </Art>
      );
  }
}

function Marked({ mark, children }: { readonly mark: string; readonly children: ComponentChildren }) {
  return (
    <>
      <Index mark={mark} />
      <Art>{children}</Art>
    </>
  );
}
