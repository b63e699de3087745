// Makes a lesson to play along of the drill that a teacher prepares: a link that holds all of it, or a file.
import { useSignal } from '@preact/signals';
import {
  type DrillFile,
  drillFileText,
  lessonFile,
  lessonText,
  readLesson,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { packText } from '../../app/routes/packed-text.ts';
import { CopyLink } from '../../room/copy-link.tsx';
import { ProblemList } from '../../ui/problem-list.tsx';
import { QrPicture } from '../../ui/qr-picture.tsx';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { MAY_SHARE } from '../../ui/strings.ts';
import { LESSON_FORM } from './strings.ts';

/** Letters that a camera still reads from a screen; the densest code would hold 2,331. */
const MAX_SCANNED = 1_200;

interface LessonFormProps {
  readonly app: App;
  /** The drill as it is now. */
  readonly file: DrillFile;
  /** Name of the card in it about which nobody has said yet whether it may be passed on; null for none. */
  readonly asksAbout: string | null;
  /** Somebody has said that it may. */
  readonly onMayShare: () => void;
}

/** A lesson that was made, and the text of the drill that it was made of. */
interface Made {
  readonly text: string;
  readonly packed: string;
}

export function LessonForm({ app, file, asksAbout, onMayShare }: LessonFormProps) {
  const made = useSignal<Made | null>(null);
  const problems = useSignal<readonly string[]>([]);
  const asking = useSignal(false);
  const text = lessonText(file);

  async function make() {
    asking.value = false;
    const read = readLesson(text);
    problems.value = read.ok ? [] : read.problems.map(({ message }) => message);
    made.value = read.ok ? { text, packed: await packText(text) } : null;
  }

  return (
    <section class="class-form lesson-form" aria-labelledby="lesson-form-title">
      <h2 id="lesson-form-title">{LESSON_FORM.title}</h2>
      <p>{LESSON_FORM.about}</p>
      <ProblemList problems={problems.value} />
      <div class="row">
        <button
          type="button"
          onClick={() => {
            if (asksAbout === null) void make();
            else asking.value = true;
          }}
        >
          {LESSON_FORM.make}
        </button>
      </div>
      {asking.value && asksAbout !== null && (
        <div class="notice" role="alert">
          <p>{MAY_SHARE.question(asksAbout)}</p>
          <button
            type="button"
            onClick={() => {
              onMayShare();
              void make();
            }}
          >
            {MAY_SHARE.yes}
          </button>
        </div>
      )}
      {made.value?.text === text && <Ways app={app} file={file} packed={made.value.packed} />}
    </section>
  );
}

interface WaysProps extends Pick<LessonFormProps, 'app' | 'file'> {
  readonly packed: string;
}

function Ways({ app, file, packed }: WaysProps) {
  const link = app.linkTo({ kind: 'lesson-link', packed });
  const name = `${fileName(file.drill.title)}-lesson.json`;
  return (
    <>
      <CopyLink link={link} label={LESSON_FORM.link} copied={LESSON_FORM.copied} />
      {link.length <= MAX_SCANNED ? (
        <QrPicture link={link} about={LESSON_FORM.scanAbout} caption={LESSON_FORM.scan} />
      ) : (
        <p class="aside">{LESSON_FORM.tooLarge}</p>
      )}
      <div class="row">
        <button
          type="button"
          onClick={() => saveFile(name, 'application/json', drillFileText(lessonFile(file)))}
        >
          {LESSON_FORM.file}
        </button>
        <button type="button" onClick={() => app.go({ kind: 'lesson-link', packed })}>
          {LESSON_FORM.look}
        </button>
      </div>
    </>
  );
}
