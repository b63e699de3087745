// The pad on which a hand is laid: how many, which suit, and a button for every tile.
import { type Signal, useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { DRAGONS, type Face, SUITS, type Suit, WINDS } from '../../../shared-engine/index.ts';
import { Tile } from '../../tiles/tile.tsx';
import { tileName } from '../../tiles/tile-names.ts';
import type { Laid, LaidAs } from './meaning.ts';
import { PAD } from './strings.ts';

const SIZES = [1, 2, 3, 4, 5, 6] as const;
const DIGITS = [1, 2, 3, 4, 5, 6, 7, 8, 9] as const;

export interface PadProps {
  /** Digits of the card's year; null where it has none. */
  readonly year: string | null;
  readonly onLay: (laid: Laid) => void;
}

/** How many and the suit stay for the next group, as hands on a card often go on with them. */
export function Pad({ year, onLay }: PadProps) {
  const size = useSignal<number>(3);
  const suit = useSignal<Suit>('bam');
  const lay = (face: Face, as: LaidAs = 'tile') => onLay({ size: size.value, face, as });
  const yearFace = (digit: number): Face =>
    DIGITS.map((d): Face => `${suit.value}-${d}`)[digit - 1] ?? 'white';
  return (
    <div class="pad">
      <Choices name="pad-size" title={PAD.size} of={SIZES} chosen={size} />
      <Choices name="pad-suit" title={PAD.suit} of={SUITS} chosen={suit} />
      <fieldset class="pad-tiles">
        <legend class="spoken">{PAD.numbers}</legend>
        {DIGITS.map((digit) => (
          <PadTile key={digit} face={`${suit.value}-${digit}`} onLay={lay} />
        ))}
      </fieldset>
      <fieldset class="pad-tiles">
        <legend class="spoken">{PAD.honors}</legend>
        {[...WINDS, ...DRAGONS, 'flower' as const].map((face) => (
          <PadTile key={face} face={face} onLay={lay} />
        ))}
        <PadTile face="white" as="zero" label={PAD.zero} onLay={lay}>
          <span class="pad-word">{PAD.zeroShort}</span>
        </PadTile>
        {year !== null &&
          ([0, 1, 2, 3] as const).map((place) => (
            <PadTile
              key={place}
              face={yearFace(Number(year[place]))}
              as={place}
              label={PAD.year(place + 1)}
              onLay={lay}
            >
              <span class="pad-word">{`y${place + 1}`}</span>
            </PadTile>
          ))}
      </fieldset>
    </div>
  );
}

interface ChoicesProps<T extends string | number> {
  readonly name: string;
  readonly title: string;
  readonly of: readonly T[];
  readonly chosen: Signal<T>;
}

function Choices<T extends string | number>({ name, title, of, chosen }: ChoicesProps<T>) {
  return (
    <fieldset class="row">
      <legend class="spoken">{title}</legend>
      {of.map((value) => (
        <label key={value} class="choice pill">
          <input
            type="radio"
            name={name}
            checked={chosen.value === value}
            onChange={() => {
              chosen.value = value;
            }}
          />
          <span>{typeof value === 'number' ? `${value} ×` : value}</span>
        </label>
      ))}
    </fieldset>
  );
}

interface PadTileProps {
  readonly face: Face;
  readonly as?: LaidAs;
  readonly label?: string;
  readonly onLay: (face: Face, as: LaidAs) => void;
  readonly children?: ComponentChildren;
}

function PadTile({ face, as = 'tile', label, onLay, children }: PadTileProps) {
  return (
    <button
      type="button"
      class="pad-tile"
      aria-label={label ?? tileName(face)}
      onClick={() => onLay(face, as)}
    >
      <Tile face={face} small />
      {children}
    </button>
  );
}
