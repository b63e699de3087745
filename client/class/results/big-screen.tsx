// The big screen of a class: one step in large print, its rack, and the choices once they are revealed.
import { useEffect } from 'preact/hooks';
import { type BigScreen, bigScreenSchema, classLink, classPath } from '../../../shared-engine/index.ts';
import { ROOM } from '../../room/strings.ts';
import { Tile } from '../../tiles/tile.tsx';
import { tileList } from '../../tiles/tile-names.ts';
import { QrPicture } from '../../ui/qr-picture.tsx';
import { CLASS, choiceTitle } from '../model/strings.ts';
import { useUpdates } from '../model/use-updates.ts';
import { Aims } from './aims.tsx';
import { SpreadPicture } from './spread-picture.tsx';
import { BIG_SCREEN } from './strings.ts';

/** Choices that fit below the rack on a screen of 1080 pixels. */
const MAX_ROWS = 7;

export function BigScreenPage({ code }: { readonly code: string }) {
  const { value, problem } = useUpdates(classPath(code, 'big-screen'), bigScreenSchema);
  const title = value?.title;
  useEffect(() => {
    if (title) document.title = `${title} · ${ROOM.product}`;
  }, [title]);
  return (
    <main class="big-screen">
      {value === null ? (
        <p role="status">{problem ?? CLASS.opening}</p>
      ) : (
        <>
          <header class="big-screen-head">
            <h1>{value.shown ? choiceTitle(value.shown) : value.title}</h1>
            <p>
              {value.deal && CLASS.dealNumber(value.deal.number, value.deal.of)}
              {value.deal?.title && `: ${value.deal.title}`}
            </p>
            {problem && <p role="alert">{problem}</p>}
          </header>
          {value.shown ? <StepView bigScreen={value} shown={value.shown} /> : <JoinView bigScreen={value} />}
        </>
      )}
    </main>
  );
}

function JoinView({ bigScreen: { code, ended } }: { readonly bigScreen: BigScreen }) {
  return (
    <section class="big-screen-center">
      {ended ? (
        <p>{CLASS.ended}</p>
      ) : (
        <>
          <p>{BIG_SCREEN.join}</p>
          <p class="big-screen-code">{[...code].join(' ')}</p>
          <p>{BIG_SCREEN.at(window.location.host)}</p>
          <QrPicture link={`${window.location.origin}${classLink(code)}`} />
        </>
      )}
    </section>
  );
}

interface StepViewProps {
  readonly bigScreen: BigScreen;
  readonly shown: NonNullable<BigScreen['shown']>;
}

function StepView({ bigScreen, shown }: StepViewProps) {
  const { rack, spread, aims, sections, answered, players } = bigScreen;
  return (
    <>
      {rack ? (
        <section class="big-screen-rack" aria-label={BIG_SCREEN.rack}>
          <p class="spoken">{tileList(rack)}</p>
          {rack.map((face, place) => (
            <Tile key={`${place}-${face}`} face={face} />
          ))}
        </section>
      ) : (
        <p>{BIG_SCREEN.racksDiffer}</p>
      )}
      <Aims aims={aims} names={sections} />
      {shown.revealed ? (
        <section aria-labelledby="big-screen-choices">
          <h2 id="big-screen-choices">{BIG_SCREEN.choices}</h2>
          {spread ? <SpreadPicture spread={spread} maxRows={MAX_ROWS} /> : <p>{BIG_SCREEN.nobody}</p>}
        </section>
      ) : (
        <section class="big-screen-center">
          <p class="big-screen-question">
            {shown.kind === 'pass' ? BIG_SCREEN.passQuestion : BIG_SCREEN.question}
          </p>
          {answered !== null && <p role="status">{BIG_SCREEN.chosen(answered, players)}</p>}
        </section>
      )}
    </>
  );
}
