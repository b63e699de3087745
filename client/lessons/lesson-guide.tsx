// The exchange explained on an example: a table in the page with a guide who speaks before each choice.

import { RoomScreen } from '../app/room-screen.tsx';
import type { App } from '../app/routes/app.ts';
import type { Room } from '../room/room.ts';
import type { Screen } from '../room/screen.ts';
import { LESSON, lessonWords } from './strings.ts';

interface LessonScreenProps {
  readonly app: App;
  readonly open: () => Room;
}

export function LessonScreen({ app, open }: LessonScreenProps) {
  return <RoomScreen app={app} open={open} guide={(screen) => <Guide app={app} screen={screen} />} />;
}

function Guide({ app, screen }: { readonly app: App; readonly screen: Screen }) {
  const words = lessonWords(screen);
  if (words.length === 0) return null;
  return (
    <aside class="guide" aria-label={LESSON.label}>
      <div aria-live="polite">
        {words.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
      {screen.kind === 'closed' && (
        <button type="button" class="primary" onClick={() => app.go({ kind: 'front' })}>
          {LESSON.finish}
        </button>
      )}
    </aside>
  );
}
