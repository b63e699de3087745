// Where a teacher prepares a class: its deals, how it plays, its card, and the drill as a file.
import { useSignal } from '@preact/signals';
import {
  type ClassTerms,
  compileCard,
  createSwarKernel,
  type Drill,
  houseCard,
  parseCard,
  readDrill,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { randomHex } from '../../connection/random.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { cardForTables, markCardUsed } from '../../storage/own-cards.ts';
import { Bar } from '../../ui/bar.tsx';
import { CardFileField } from '../../ui/card-file-field.tsx';
import { CardSelect } from '../../ui/card-select.tsx';
import { FileButton } from '../../ui/file-button.tsx';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { CARD_FIELD } from '../../ui/strings.ts';
import { openClass } from '../model/requests.ts';
import { FormFields, TermsFields } from './class-form.tsx';
import { type ClassCard, DealEditor } from './deal-editor.tsx';
import { type DealKind, emptyDrill, newDeal, withDeal } from './draft.ts';
import { PREPARE } from './strings.ts';

const newSeed = () => randomHex(32);
const KINDS: readonly DealKind[] = ['random', 'manual', 'sampled'];
const HOUSE: ClassCard = { file: null, sections: houseCard().sections };

export function PrepareScreen({ app }: { readonly app: App }) {
  const { drill, terms, card, problems, ...draft } = useClassDraft(app);
  return (
    <>
      <Bar app={app} home />
      <main class="class-page prepare">
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
            onInput={(event) => draft.change({ ...drill.value, title: event.currentTarget.value })}
          />
        </div>
        <DealsSection drill={drill.value} card={card.value} onChange={draft.change} />
        <FormFields drill={drill.value} onChange={draft.change} />
        <TermsFields
          form={drill.value.form}
          terms={terms.value}
          onChange={(next) => {
            terms.value = next;
          }}
        />
        <CardSelect id="class-own-card" value={draft.ownCard.value} onChange={draft.takeOwn} />
        <CardFileField
          id="class-card"
          chosen={PREPARE.cardChosen}
          otherwise={draft.ownCard.value === null ? CARD_FIELD.house : CARD_FIELD.own}
          onCard={draft.takeCard}
        />
        <Problems problems={problems.value} />
        <div class="row">
          <button
            type="button"
            class="primary"
            aria-disabled={draft.busy.value}
            onClick={() => void draft.open()}
          >
            {PREPARE.open}
          </button>
          <DrillFileButtons drill={draft.named} onFile={(file) => void draft.loadDrill(file)} />
        </div>
      </main>
    </>
  );
}

/** What the teacher has entered so far, what is wrong with it, and what can be done with it. */
function useClassDraft(app: App) {
  const drill = useSignal<Drill>(emptyDrill(newSeed));
  const terms = useSignal<ClassTerms>({ deadline: null, racks: false, names: false, cardClosed: false });
  const ownCard = useSignal(app.settings.peek().card);
  const card = useSignal<ClassCard>(classCardOf(cardForTables(lastingStorage, ownCard.peek())) ?? HOUSE);
  const problems = useSignal<readonly string[]>([]);
  const busy = useSignal(false);

  const change = (next: Drill) => {
    drill.value = next;
    problems.value = [];
  };
  const named = (): Drill => ({ ...drill.value, title: drill.value.title.trim() || PREPARE.untitled });

  async function loadDrill(file: File) {
    const { file: cardFile } = card.value;
    const kernel = createSwarKernel(cardFile ? compileCard(cardFile) : houseCard());
    const read = readDrill(await file.text(), kernel);
    if (read.ok) return change(read.drill);
    problems.value = [PREPARE.otherFile, ...read.problems.map(({ message }) => message)];
  }

  /** Why the card cannot be used, or null. */
  function takeCard(file: unknown): string | null {
    ownCard.value = null;
    const parsed = file === null ? null : parseCard(file);
    card.value = (parsed?.ok && classCardOf(parsed.card)) || HOUSE;
    problems.value = parsed === null || parsed.ok ? [] : parsed.problems.map(({ message }) => message);
    return parsed === null || parsed.ok ? null : PREPARE.otherCard;
  }

  function takeOwn(key: string | null) {
    takeCard(cardForTables(lastingStorage, key));
    ownCard.value = key;
  }

  async function open() {
    if (busy.value) return;
    busy.value = true;
    const answer = await openClass({ drill: named(), terms: terms.value, card: card.value.file });
    busy.value = false;
    if (answer.ok) markCardUsed(lastingStorage, ownCard.value, new Date().toISOString().slice(0, 10));
    if (answer.ok) return app.go({ kind: 'class', code: answer.value.code, part: 'main' });
    problems.value = [answer.message, ...(answer.problems ?? [])];
  }

  return { drill, terms, card, problems, busy, change, named, loadDrill, takeCard, takeOwn, ownCard, open };
}

/** Null for what is no card, and for none. */
function classCardOf(json: unknown): ClassCard | null {
  const parsed = json === null ? null : parseCard(json);
  return parsed?.ok ? { file: parsed.card, sections: compileCard(parsed.card).sections } : null;
}

interface DealsSectionProps {
  readonly drill: Drill;
  readonly card: ClassCard;
  readonly onChange: (drill: Drill) => void;
}

function DealsSection({ drill, card, onChange }: DealsSectionProps) {
  const { deals, bots } = drill;
  const remove = (place: number) =>
    onChange({ ...drill, deals: deals.filter((_, other) => other !== place) });
  return (
    <section class="deals" aria-labelledby="deals-title">
      <h2 id="deals-title">{PREPARE.deals}</h2>
      {deals.map((deal, place) => (
        <DealEditor
          key={deal.id}
          deal={deal}
          number={place + 1}
          bots={bots}
          card={card}
          onChange={(next) => onChange(withDeal(drill, place, next))}
          onRemove={deals.length === 1 ? null : () => remove(place)}
        />
      ))}
      <div class="row">
        {KINDS.map((kind) => (
          <button
            key={kind}
            type="button"
            onClick={() => onChange({ ...drill, deals: [...deals, newDeal(deals, kind, newSeed())] })}
          >
            {PREPARE.addDeal[kind]}
          </button>
        ))}
      </div>
    </section>
  );
}

function Problems({ problems }: { readonly problems: readonly string[] }) {
  return (
    <div class="notice" role="alert">
      {problems.length > 0 && (
        <>
          <p>{PREPARE.problems}</p>
          <ul class="problems">
            {problems.map((problem) => (
              <li key={problem}>{problem}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  );
}

interface DrillFileButtonsProps {
  readonly drill: () => Drill;
  readonly onFile: (file: File) => void;
}

function DrillFileButtons({ drill, onFile }: DrillFileButtonsProps) {
  function save() {
    const saved = drill();
    saveFile(`${fileName(saved.title)}.json`, 'application/json', `${JSON.stringify(saved, null, 2)}\n`);
  }
  return (
    <>
      <button type="button" onClick={save}>
        {PREPARE.save}
      </button>
      <FileButton words={PREPARE.load} onFile={onFile} />
    </>
  );
}
