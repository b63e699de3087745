// The guide of the example: what to look at before each choice, said above the table.
import type { Screen } from '../room/screen.ts';
import { LESSON, lessonSentences } from './lesson.ts';

interface LessonGuideProps {
  readonly screen: Screen;
  readonly onFinish: () => void;
}

export function LessonGuide({ screen, onFinish }: LessonGuideProps) {
  const sentences = lessonSentences(screen);
  if (sentences.length === 0) return null;
  return (
    <aside class="guide" aria-label={LESSON.label}>
      <div aria-live="polite">
        {sentences.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {screen.kind === 'closed' && (
        <button type="button" class="primary" onClick={onFinish}>
          {LESSON.finish}
        </button>
      )}
    </aside>
  );
}
