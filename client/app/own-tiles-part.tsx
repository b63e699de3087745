// Practice with real tiles, connected to the page: its storage, the chosen card, the worker that judges.
import { useMemo } from 'preact/hooks';
import { randomHex } from '../connection/random.ts';
import { OwnTilesScreen } from '../practice/own-tiles/own-tiles-screen.tsx';
import { Alternatives } from '../review/alternatives.tsx';
import { lastingStorage } from '../storage/browser-storage.ts';
import { Bar } from '../ui/bar.tsx';
import { startDeepAnalysis } from '../workers/deep-analysis.ts';
import { chosenCard } from './chosen-card.ts';
import type { App } from './routes/app.ts';
import '../review/review.css';
import '../review/choice-strip.css';
import '../review/deep-analysis.css';

export function OwnTilesPage({ app }: { readonly app: App }) {
  const chosen = useMemo(() => chosenCard(app.settings.peek().card), []);
  return (
    <>
      <Bar app={app} home />
      <OwnTilesScreen
        app={app}
        storage={lastingStorage}
        now={Date.now}
        {...chosen}
        startDeepAnalysis={startDeepAnalysis}
        chart={({ choice: { kind, analysis }, story }) =>
          analysis.depth === 'deep' && <Alternatives kind={kind} analysis={analysis} rows={story.rows} />
        }
        newSeed={() => randomHex(32)}
      />
    </>
  );
}
