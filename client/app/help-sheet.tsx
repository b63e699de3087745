// Help over any screen: the Charleston in brief, the words, the tiles by picture, the keys, and the way to the example.
import type { Face } from '../../shared-engine/index.ts';
import type { App } from './routes/app.ts';
import { pathOf } from './routes/route.ts';
import '../ui/sheet.css';
import '../tiles/tiles.css';
import { StepArrow } from '../room/step-strip.tsx';
import { Tile } from '../tiles/tile.tsx';
import { tileName } from '../tiles/tile-names.ts';
import { goInPage } from '../ui/in-page-link.ts';
import { Sheet } from '../ui/sheet.tsx';
import { CLASS_FORMS, EXCHANGE, HELP, KEYS, REVIEW_WORDS, TILE_LEGEND, WORDS } from './help-strings.ts';

export function HelpSheet({ app }: { readonly app: App }) {
  const busy = app.route.value.kind === 'room';
  return (
    <Sheet title={HELP.title} onClose={() => app.show(null)}>
      <p>{HELP.about}</p>
      <p>
        <a
          class="button"
          href={pathOf({ kind: 'lesson' })}
          // Somebody at a table stays there; the example opens in another tab.
          {...(busy ? { target: '_blank', rel: 'noopener' } : {})}
          onClick={(event) => {
            if (!busy) goInPage(event, () => app.go({ kind: 'lesson' }));
          }}
        >
          {busy ? HELP.exampleBeside : HELP.example}
        </a>
      </p>
      <section>
        <h3>{HELP.exchange}</h3>
        <ol class="help-steps">
          {EXCHANGE.map(({ steps, title, words }) => (
            <li key={title}>
              <p>
                <span class="help-arrows">
                  {steps.map((step) => (
                    <StepArrow key={step} step={step} />
                  ))}
                </span>
                <b>{title}</b>
              </p>
              <p>{words}</p>
            </li>
          ))}
        </ol>
      </section>
      <Words title={HELP.words} words={WORDS} />
      <Words title={HELP.reviewWords} words={REVIEW_WORDS} />
      <section>
        <h3>{HELP.tiles}</h3>
        <ul class="legend">
          {TILE_LEGEND.map(({ faces, words }) => (
            <Legend key={words} faces={faces} words={words} />
          ))}
        </ul>
      </section>
      <section>
        <h3>{HELP.class}</h3>
        <ul class="help-steps">
          {CLASS_FORMS.map(({ title, words }) => (
            <li key={title}>
              <p>
                <b>{title}</b>
              </p>
              <p>{words}</p>
            </li>
          ))}
        </ul>
      </section>
      <section>
        <h3>{HELP.keys}</h3>
        <dl class="keys">
          {KEYS.map(({ keys, words }) => (
            <div key={keys}>
              <dt>
                <kbd>{keys}</kbd>
              </dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </section>
    </Sheet>
  );
}

interface WordsProps {
  readonly title: string;
  readonly words: typeof WORDS;
}

function Words({ title, words }: WordsProps) {
  return (
    <section>
      <h3>{title}</h3>
      <dl class="help-words">
        {words.map(({ word, about }) => (
          <div key={word}>
            <dt>{word}</dt>
            <dd>{about}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function Legend({ faces, words }: { readonly faces: readonly Face[]; readonly words: string }) {
  return (
    <li>
      <span class="legend-tiles">
        {faces.map((face) => (
          <span key={face} class="legend-tile">
            <Tile face={face} />
            <span class="spoken">{tileName(face)} </span>
          </span>
        ))}
      </span>
      <span>{words}</span>
    </li>
  );
}
