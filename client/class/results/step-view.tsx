// One step as the class discusses it: its rack, and the choices once they are revealed. On the big screen and the dashboard.
import type { BigScreen } from '../../../shared-engine/index.ts';
import { Tile } from '../../tiles/tile.tsx';
import { tileList } from '../../tiles/tile-names.ts';
import { Aims } from './aims.tsx';
import { SpreadPicture } from './spread-picture.tsx';
import { BIG_SCREEN } from './strings.ts';

interface StepViewProps {
  readonly bigScreen: BigScreen;
  readonly shown: NonNullable<BigScreen['shown']>;
  readonly maxRows: number;
}

export function StepView({ bigScreen, shown, maxRows }: StepViewProps) {
  const { rack, spread, aims, sections, answered, players } = bigScreen;
  // Where no cost is shown for that reason, it is said there.
  const isSaid = shown.revealed && spread?.racks === 0;
  return (
    <>
      {rack ? (
        <div class="big-screen-rack" role="img" aria-label={`${BIG_SCREEN.rack}: ${tileList(rack)}`}>
          {rack.map((face, place) => (
            <Tile key={`${place}-${face}`} face={face} />
          ))}
        </div>
      ) : (
        !isSaid && <p>{BIG_SCREEN.racksDiffer}</p>
      )}
      {shown.revealed ? (
        <section aria-label={BIG_SCREEN.choices}>
          {spread ? <SpreadPicture spread={spread} maxRows={maxRows} /> : <p>{BIG_SCREEN.nobody}</p>}
        </section>
      ) : (
        <div class="big-screen-center">
          <p class="big-screen-question">
            {shown.kind === 'pass' ? BIG_SCREEN.passQuestion : BIG_SCREEN.question}
          </p>
          {answered !== null && <p role="status">{BIG_SCREEN.chosen(answered, players)}</p>}
        </div>
      )}
      <Aims aims={aims} names={sections} />
    </>
  );
}
