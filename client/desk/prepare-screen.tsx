// Where a teacher prepares a class: its deals, how it sits, what it is told, and the drill as a file.
import { useSignal } from '@preact/signals';
import {
  type ClassTerms,
  createKernel,
  DRILL_FORMS,
  type Drill,
  houseCard,
  type Kernel,
  readDrill,
  STYLES,
  type StyleName,
} from '../../shared-engine/index.ts';
import type { App } from '../model/app.ts';
import { randomHex } from '../model/chance.ts';
import { Bar } from '../views/bar.tsx';
import { seconds } from '../words/front.ts';
import { STYLE_WORDS } from '../words/styles.ts';
import { DealEditor } from './deal-editor.tsx';
import { type DealKind, emptyDrill, newDeal, withDeal } from './draft.ts';
import { fileName, saveFile } from './drill-file.ts';
import { openClass } from './requests.ts';
import { PREPARE } from './words.ts';

const newSeed = () => randomHex(32);
const KINDS: readonly (readonly [DealKind, string])[] = [
  ['random', PREPARE.addRandom],
  ['composed', PREPARE.addComposed],
  ['described', PREPARE.addDescribed],
];
const DEADLINES = [null, 30, 60, 120, 300] as const;

let kernel: Kernel | null = null;
function houseKernel(): Kernel {
  kernel ??= createKernel(houseCard());
  return kernel;
}

export function PrepareScreen({ app }: { readonly app: App }) {
  const drill = useSignal<Drill>(emptyDrill(newSeed));
  const terms = useSignal<ClassTerms>({ deadline: null, racks: false, names: false });
  const problems = useSignal<readonly string[]>([]);
  const busy = useSignal(false);

  const change = (next: Drill) => {
    drill.value = next;
    problems.value = [];
  };
  const named = (): Drill => ({ ...drill.value, title: drill.value.title.trim() || PREPARE.untitled });

  async function load(input: HTMLInputElement) {
    const file = input.files?.[0];
    input.value = '';
    if (!file) return;
    const read = readDrill(await file.text(), houseKernel());
    if (read.ok) return change(read.drill);
    problems.value = [PREPARE.otherFile, ...read.problems.map(({ sentence }) => sentence)];
  }

  async function open() {
    if (busy.value) return;
    busy.value = true;
    const answer = await openClass({ drill: named(), terms: terms.value, card: null });
    busy.value = false;
    if (answer.ok) return app.go({ kind: 'class', code: answer.value.code, part: 'main' });
    problems.value = [answer.sentence, ...(answer.problems ?? [])];
  }

  return (
    <>
      <Bar app={app} home />
      <main class="desk prepare">
        <header>
          <h1>{PREPARE.title}</h1>
          <p>{PREPARE.about}</p>
        </header>
        <div class="field">
          <label for="drill-title">{PREPARE.drillTitle}</label>
          <input
            id="drill-title"
            maxLength={80}
            value={drill.value.title}
            onInput={(event) => change({ ...drill.value, title: event.currentTarget.value })}
          />
        </div>
        <section class="deals" aria-labelledby="deals-title">
          <h2 id="deals-title">{PREPARE.deals}</h2>
          {drill.value.deals.map((deal, place) => (
            <DealEditor
              key={deal.id}
              deal={deal}
              number={place + 1}
              onChange={(next) => change(withDeal(drill.value, place, next))}
              onRemove={
                drill.value.deals.length === 1
                  ? null
                  : () =>
                      change({
                        ...drill.value,
                        deals: drill.value.deals.filter((other) => other !== deal),
                      })
              }
            />
          ))}
          <div class="row">
            {KINDS.map(([kind, words]) => (
              <button
                key={kind}
                type="button"
                onClick={() => {
                  const { deals } = drill.value;
                  change({ ...drill.value, deals: [...deals, newDeal(deals, kind, newSeed())] });
                }}
              >
                {words}
              </button>
            ))}
          </div>
        </section>
        <Sitting drill={drill.value} onChange={change} />
        <Terms
          terms={terms.value}
          onChange={(next) => {
            terms.value = next;
          }}
        />
        <div class="notice" role="alert">
          {problems.value.length > 0 && (
            <>
              <p>{PREPARE.problems}</p>
              <ul class="problems">
                {problems.value.map((sentence) => (
                  <li key={sentence}>{sentence}</li>
                ))}
              </ul>
            </>
          )}
        </div>
        <div class="row">
          <button type="button" class="primary" aria-disabled={busy.value} onClick={() => void open()}>
            {PREPARE.open}
          </button>
          <button
            type="button"
            onClick={() =>
              saveFile(
                `${fileName(named().title)}.json`,
                'application/json',
                `${JSON.stringify(named(), null, 2)}\n`,
              )
            }
          >
            {PREPARE.save}
          </button>
          <label class="button file-button">
            {PREPARE.load}
            <input
              type="file"
              class="spoken"
              accept="application/json,.json"
              onChange={(event) => void load(event.currentTarget)}
            />
          </label>
        </div>
      </main>
    </>
  );
}

function Sitting({ drill, onChange }: { readonly drill: Drill; readonly onChange: (drill: Drill) => void }) {
  const style = drill.bots.styles[0];
  return (
    <section class="sitting">
      <fieldset>
        <legend>{PREPARE.form}</legend>
        {DRILL_FORMS.map((form) => (
          <label key={form} class="choice">
            <input
              type="radio"
              name="form"
              checked={drill.form === form}
              onChange={() => onChange({ ...drill, form })}
            />
            <span>
              <b>{PREPARE.forms[form].name}</b> {PREPARE.forms[form].about}
            </span>
          </label>
        ))}
      </fieldset>
      <div class="field">
        <label for="bot-style">{PREPARE.bots}</label>
        <select
          id="bot-style"
          value={style}
          onChange={(event) => {
            const next: StyleName | undefined = STYLES.find((one) => one === event.currentTarget.value);
            if (next) onChange({ ...drill, bots: { ...drill.bots, styles: [next, next, next] } });
          }}
        >
          {STYLES.map((one) => (
            <option key={one} value={one}>
              {STYLE_WORDS[one].name}
            </option>
          ))}
        </select>
      </div>
    </section>
  );
}

interface TermsProps {
  readonly terms: ClassTerms;
  readonly onChange: (terms: ClassTerms) => void;
}

function Terms({ terms, onChange }: TermsProps) {
  return (
    <section class="sitting">
      <div class="field">
        <label for="class-deadline">{PREPARE.deadline}</label>
        <select
          id="class-deadline"
          value={String(terms.deadline)}
          onChange={(event) => {
            const chosen = DEADLINES.find((one) => String(one) === event.currentTarget.value);
            if (chosen !== undefined) onChange({ ...terms, deadline: chosen });
          }}
        >
          {DEADLINES.map((one) => (
            <option key={String(one)} value={String(one)}>
              {one === null ? PREPARE.noDeadline : seconds(one)}
            </option>
          ))}
        </select>
      </div>
      {(['racks', 'names'] as const).map((entry) => (
        <label key={entry} class="choice">
          <input
            type="checkbox"
            checked={terms[entry]}
            onChange={(event) => onChange({ ...terms, [entry]: event.currentTarget.checked })}
          />
          {PREPARE[entry]}
        </label>
      ))}
      <p class="aside">{PREPARE.told}</p>
    </section>
  );
}
