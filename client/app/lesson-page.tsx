// A lesson played along, connected to the page: the worker that judges, and the chart of a choice's alternatives.
import { tilesGone } from '../../shared-engine/index.ts';
import { CardPanel } from '../cards/card-panel.tsx';
import { LessonScreen } from '../practice/lesson/lesson-screen.tsx';
import { LESSON } from '../practice/lesson/strings.ts';
import { Alternatives } from '../review/alternatives.tsx';
import { Bar } from '../ui/bar.tsx';
import { startDeepAnalysis } from '../workers/deep-analysis.ts';
import type { App } from './routes/app.ts';
import '../cards/card.css';
import '../review/review.css';
import '../review/choice-strip.css';
import '../review/deep-analysis.css';

export function LessonPage({ app, packed }: { readonly app: App; readonly packed: string }) {
  return (
    <>
      <Bar app={app} home />
      <LessonScreen
        packed={packed}
        startDeepAnalysis={startDeepAnalysis}
        card={({ load, view, onClose }) => (
          <CardPanel
            load={load}
            rack={view.rack}
            nearestFirst={view.terms.cardHelp === 'nearest'}
            gone={tilesGone(view.record)}
            onClose={onClose}
          />
        )}
        chart={({ choice: { kind, analysis }, story }) =>
          analysis.depth === 'deep' && (
            <details>
              <summary>{LESSON.scale}</summary>
              <Alternatives kind={kind} analysis={analysis} rows={story.rows} />
            </details>
          )
        }
      />
    </>
  );
}
