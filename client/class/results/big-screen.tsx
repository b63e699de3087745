// The big screen of a class, to be read from the back row: how to join, or one step with its rack and its choices.
import { useEffect } from 'preact/hooks';
import { type BigScreen, bigScreenSchema, classLink, classPath } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { ROOM } from '../../room/strings.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { reachableOrigin } from '../../storage/public-address.ts';
import { type Settings, TEXT_SIZES } from '../../storage/settings.ts';
import { QrPicture } from '../../ui/qr-picture.tsx';
import { CLASS, choiceTitle } from '../model/strings.ts';
import { useUpdates } from '../model/use-updates.ts';
import { StepView } from './step-view.tsx';
import { BIG_SCREEN } from './strings.ts';

/** Choices that fit below the rack and the best on a screen of 16 by 9, by the size of the text. */
const ROWS: Readonly<Record<Settings['textSize'], number>> = { 100: 5, 125: 3, 150: 2, 175: 2, 200: 2 };

interface BigScreenPageProps {
  readonly app: App;
  readonly code: string;
}

export function BigScreenPage({ app, code }: BigScreenPageProps) {
  const { value, problem } = useUpdates(classPath(code, 'big-screen'), bigScreenSchema);
  const title = value?.title;
  useEffect(() => {
    if (title) document.title = `${title} · ${ROOM.product}`;
  }, [title]);
  return (
    <main class="big-screen">
      {value === null ? <p role="status">{problem ?? CLASS.opening}</p> : <Shown app={app} value={value} />}
      {value !== null && problem && <p role="alert">{problem}</p>}
    </main>
  );
}

function Shown({ app, value }: { readonly app: App; readonly value: BigScreen }) {
  const { shown, deal, title } = value;
  return (
    <>
      <header class="big-screen-head">
        <h1>{shown ? choiceTitle(shown) : title}</h1>
        <p>
          {deal && CLASS.dealNumber(deal.number, deal.of)}
          {deal?.title && `: ${deal.title}`}
        </p>
        <TextSize app={app} />
      </header>
      {shown ? (
        <StepView bigScreen={value} shown={shown} maxRows={ROWS[app.settings.value.textSize]} />
      ) : (
        <JoinView bigScreen={value} />
      )}
    </>
  );
}

function JoinView({ bigScreen: { code, address, ended } }: { readonly bigScreen: BigScreen }) {
  if (ended) return <p class="big-screen-center">{CLASS.ended}</p>;
  const origin = reachableOrigin(lastingStorage, { own: window.location.origin, server: address });
  return (
    <section class="big-screen-join">
      <div>
        <p>{BIG_SCREEN.join}</p>
        <p class="big-screen-code">{[...code].join(' ')}</p>
        <p>{BIG_SCREEN.at((origin ?? window.location.origin).replace(/^https?:\/\//, ''))}</p>
        {origin === null && <p>{BIG_SCREEN.ownComputer}</p>}
      </div>
      {origin !== null && <QrPicture link={`${origin}${classLink(code)}`} />}
    </section>
  );
}

/** At the wall nobody opens the settings: two buttons that are plain to whoever stands at its keyboard. */
function TextSize({ app }: { readonly app: App }) {
  const at = TEXT_SIZES.indexOf(app.settings.value.textSize);
  const [smaller, larger] = [TEXT_SIZES[at - 1], TEXT_SIZES[at + 1]];
  return (
    <div class="big-screen-tools">
      {smaller !== undefined && (
        <button type="button" onClick={() => app.change({ textSize: smaller })}>
          {BIG_SCREEN.smaller}
        </button>
      )}
      {larger !== undefined && (
        <button type="button" onClick={() => app.change({ textSize: larger })}>
          {BIG_SCREEN.larger}
        </button>
      )}
    </div>
  );
}
