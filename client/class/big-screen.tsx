// The page for the wall of the classroom: one step in large, its rack, and the choices once they are revealed.
import { useEffect } from 'preact/hooks';
import { type BigScreen, bigScreenSchema, classLink, classPath } from '../../shared-engine/index.ts';
import { ROOM } from '../room/strings.ts';
import { Tile } from '../tiles/tile.tsx';
import { tileList } from '../tiles/tile-names.ts';
import { Scan } from '../ui/qr-picture.tsx';
import { SpreadPicture } from './spread-picture.tsx';
import { DESK, percent, stepName, WALL } from './strings.ts';
import { useNews } from './use-updates.ts';

/** Choices that fit below the rack at 1080 lines. */
const WALL_ROWS = 7;

export function WallScreen({ code }: { readonly code: string }) {
  const { value, problem } = useNews(classPath(code, 'big-screen'), bigScreenSchema);
  const title = value?.title;
  useEffect(() => {
    if (title) document.title = `${title} · ${ROOM.product}`;
  }, [title]);
  return (
    <main class="wall">
      {value === null ? (
        <p role="status">{problem ?? ROOM.opening}</p>
      ) : (
        <>
          <header class="wall-head">
            <h1>{value.shown ? stepName(value.shown) : value.title}</h1>
            <p>
              {value.deal && DESK.dealNumber(value.deal.number, value.deal.of)}
              {value.deal?.title && `: ${value.deal.title}`}
            </p>
            {problem && <p role="alert">{problem}</p>}
          </header>
          {value.shown ? <Shown wall={value} shown={value.shown} /> : <Quiet wall={value} />}
        </>
      )}
    </main>
  );
}

function Quiet({ wall: { code, ended } }: { readonly wall: BigScreen }) {
  return (
    <section class="wall-quiet">
      {ended ? (
        <p>{DESK.ended}</p>
      ) : (
        <>
          <p>{WALL.join}</p>
          <p class="wall-code">{[...code].join(' ')}</p>
          <p>{WALL.at(window.location.host)}</p>
          <Scan link={`${window.location.origin}${classLink(code)}`} />
        </>
      )}
    </section>
  );
}

interface ShownProps {
  readonly wall: BigScreen;
  readonly shown: NonNullable<BigScreen['shown']>;
}

function Shown({ wall, shown }: ShownProps) {
  const { rack, spread, aims, families } = wall;
  return (
    <>
      {rack ? (
        <section class="wall-rack" aria-label={WALL.rack}>
          <p class="spoken">{tileList(rack)}</p>
          {rack.map((face, place) => (
            <Tile key={`${place}-${face}`} face={face} />
          ))}
        </section>
      ) : (
        <p>{WALL.racksDiffer}</p>
      )}
      {aims.length > 0 && (
        <p class="wall-aims">
          <b>{WALL.aims}:</b>{' '}
          {aims.map(({ family, share }) => `${families[family] ?? family} ${percent(share)}`).join(' · ')}
        </p>
      )}
      {shown.revealed ? (
        <section aria-labelledby="wall-choices">
          <h2 id="wall-choices">{WALL.choices}</h2>
          {spread ? <SpreadPicture spread={spread} most={WALL_ROWS} /> : <p>{WALL.nobody}</p>}
        </section>
      ) : (
        <section class="wall-quiet">
          <p class="wall-question">{shown.kind === 'pass' ? WALL.think : WALL.thinkNumber}</p>
          <p role="status">{WALL.chosen(wall.answered, wall.players)}</p>
        </section>
      )}
    </>
  );
}
