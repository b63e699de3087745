// Practice with real tiles, connected to the page: its storage, the house card, the worker that judges.
import { houseCard } from '../cards/load-card.ts';
import { randomHex } from '../connection/random.ts';
import { OwnTilesScreen } from '../own-tiles/own-tiles-screen.tsx';
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
        newSeed={() => randomHex(32)}
      />
    </>
  );
}
