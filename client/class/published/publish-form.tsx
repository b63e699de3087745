// Publishes the drill that a teacher prepares, until a day.
import { useSignal } from '@preact/signals';
import type { CardFile, DrillFile, PublishedTerms } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { notePublished } from '../../storage/published.ts';
import { ProblemList } from '../../ui/problem-list.tsx';
import { dateAt, endOfDay } from '../model/strings.ts';
import { DayField } from './last-day.tsx';
import { publishDrill } from './requests.ts';
import { PUBLISH } from './strings.ts';

/** Days until the last one unless the teacher sets another. */
const USUAL_DAYS = 14;
const DAY_MS = 24 * 60 * 60 * 1000;
const TIMES = ['at-once', 'at-end'] as const;

interface PublishFormProps {
  readonly app: App;
  readonly file: () => DrillFile;
  /** Null for the house card; whoever opens the link gets any other. */
  readonly card: CardFile | null;
}

export function PublishForm({ app, file, card: ownCard }: PublishFormProps) {
  const date = useSignal(dateAt(Date.now() + USUAL_DAYS * DAY_MS));
  const compare = useSignal<PublishedTerms['compare']>('at-once');
  const names = useSignal(false);
  /** The card of which somebody has said that it may be published: another one is asked about anew. */
  const allowed = useSignal<CardFile | null>(null);
  const busy = useSignal(false);
  const dayProblem = useSignal<string | null>(null);
  const problems = useSignal<readonly string[]>([]);

  async function publish() {
    if (busy.value) return;
    if (ownCard !== null && allowed.value !== ownCard) {
      problems.value = [PUBLISH.sayMay(ownCard.name)];
      return;
    }
    busy.value = true;
    const { drill, card, class: classPart } = file();
    const answer = await publishDrill({
      drill,
      card: card === undefined || card === 'house' ? null : card,
      until: endOfDay(date.value) ?? 0,
      terms: { compare: compare.value, names: names.value, cardClosed: classPart?.cardClosed ?? false },
    });
    busy.value = false;
    const isDayWrong = !answer.ok && answer.code === 'bad-last-day';
    dayProblem.value = isDayWrong ? answer.message : null;
    problems.value = answer.ok || isDayWrong ? [] : [answer.message, ...(answer.problems ?? [])];
    if (!answer.ok) return;
    notePublished(lastingStorage, { code: answer.value.code, title: drill.title });
    app.go({ kind: 'drill', code: answer.value.code });
  }

  return (
    <section class="class-form publish-form" aria-labelledby="publish-title">
      <h2 id="publish-title">{PUBLISH.title}</h2>
      <p>{PUBLISH.about}</p>
      <DayField
        id="publish-last-day"
        label={PUBLISH.lastDay}
        date={date.value}
        problem={dayProblem.value}
        onDate={(next) => {
          date.value = next;
        }}
      />
      <div class="field">
        <label for="publish-compare">{PUBLISH.compare}</label>
        <select
          id="publish-compare"
          value={compare.value}
          onChange={(event) => {
            compare.value = TIMES.find((one) => one === event.currentTarget.value) ?? compare.value;
          }}
        >
          {TIMES.map((one) => (
            <option key={one} value={one}>
              {PUBLISH.times[one]}
            </option>
          ))}
        </select>
      </div>
      <label class="choice">
        <input
          type="checkbox"
          checked={names.value}
          onChange={(event) => {
            names.value = event.currentTarget.checked;
          }}
        />
        {PUBLISH.names}
      </label>
      <p class="aside">{PUBLISH.namesAbout[names.value ? 'on' : 'off']}</p>
      {ownCard !== null && (
        <>
          <p class="notice">{PUBLISH.mayPublish(ownCard.name)}</p>
          <label class="choice">
            <input
              type="checkbox"
              checked={allowed.value === ownCard}
              onChange={(event) => {
                allowed.value = event.currentTarget.checked ? ownCard : null;
                problems.value = [];
              }}
            />
            {PUBLISH.may}
          </label>
        </>
      )}
      <ProblemList problems={problems.value} />
      <div class="row">
        <button type="button" aria-disabled={busy.value} onClick={() => void publish()}>
          {PUBLISH.publish}
        </button>
      </div>
    </section>
  );
}
