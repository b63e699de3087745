// Practice with real tiles, connected to the page: its storage, the house card, the worker that judges.
import type { ChoiceReview, ChoiceStory } from '../../shared-engine/index.ts';
import { houseCard } from '../cards/load-card.ts';
import { randomHex } from '../connection/random.ts';
import { OwnTilesScreen } from '../own-tiles/own-tiles-screen.tsx';
import { Alternatives } from '../review/alternatives.tsx';
import { Sentences } from '../review/choice-sentences.tsx';
import { lastingStorage } from '../storage/browser-storage.ts';
import { Bar } from '../ui/bar.tsx';
import { startDeepAnalysis } from '../workers/deep-analysis.ts';
import type { App } from './routes/app.ts';
import '../review/review.css';
import '../review/deep-analysis.css';

export function OwnTilesPage({ app }: { readonly app: App }) {
  return (
    <>
      <Bar app={app} home />
      <OwnTilesScreen
        storage={lastingStorage}
        loadCard={() => Promise.resolve(houseCard())}
        startDeepAnalysis={startDeepAnalysis}
        tell={({ choice, story }) => <ToldChoice choice={choice} story={story} />}
        newSeed={() => randomHex(32)}
      />
    </>
  );
}

function ToldChoice({ choice, story }: { readonly choice: ChoiceReview; readonly story: ChoiceStory }) {
  const { analysis, kind } = choice;
  return (
    <>
      <Sentences story={story} />
      {analysis.depth === 'deep' && <Alternatives kind={kind} analysis={analysis} rows={story.rows} />}
    </>
  );
}
