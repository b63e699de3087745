// Where a teacher prepares a class: its deals, how it sits, what it is told, and the drill as a file.
import { useSignal } from '@preact/signals';
import {
  type ClassTerms,
  compileCard,
  createKernel,
  type Drill,
  houseCard,
  type Kernel,
  parseCard,
  readDrill,
} from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { randomHex } from '../connection/random.ts';
import { Bar } from '../ui/bar.tsx';
import { CardField } from '../ui/card-file-field.tsx';
import { fileName, saveFile } from '../ui/save-file.ts';
import { Sitting, Terms } from './class-form.tsx';
import { type ClassCard, DealEditor } from './deal-editor.tsx';
import { type DealKind, emptyDrill, newDeal, withDeal } from './draft.ts';
import { openClass } from './requests.ts';
import { PREPARE } from './strings.ts';

const newSeed = () => randomHex(32);
const KINDS: readonly (readonly [DealKind, string])[] = [
  ['random', PREPARE.addRandom],
  ['composed', PREPARE.addComposed],
  ['described', PREPARE.addDescribed],
];

const HOUSE: ClassCard = { file: null, families: houseCard().families };

let kernel: { readonly card: ClassCard; readonly kernel: Kernel } | null = null;
function kernelFor(card: ClassCard): Kernel {
  if (kernel?.card !== card) {
    kernel = { card, kernel: createKernel(card.file ? compileCard(card.file) : houseCard()) };
  }
  return kernel.kernel;
}

export function PrepareScreen({ app }: { readonly app: App }) {
  const drill = useSignal<Drill>(emptyDrill(newSeed));
  const terms = useSignal<ClassTerms>({ deadline: null, racks: false, names: false, cardClosed: false });
  const card = useSignal<ClassCard>(HOUSE);
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
    const read = readDrill(await file.text(), kernelFor(card.value));
    if (read.ok) return change(read.drill);
    problems.value = [PREPARE.otherFile, ...read.problems.map(({ sentence }) => sentence)];
  }

  function take(file: unknown): string | null {
    const parsed = file === null ? null : parseCard(file);
    card.value = parsed?.ok ? { file: parsed.card, families: compileCard(parsed.card).families } : HOUSE;
    if (parsed === null || parsed.ok) {
      problems.value = [];
      return null;
    }
    problems.value = parsed.problems.map(({ sentence }) => sentence);
    return PREPARE.otherCard;
  }

  async function open() {
    if (busy.value) return;
    busy.value = true;
    const answer = await openClass({ drill: named(), terms: terms.value, card: card.value.file });
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
              bots={drill.value.bots}
              card={card.value}
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
        <CardField id="class-card" chosen={PREPARE.cardChosen} onCard={take} />
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
