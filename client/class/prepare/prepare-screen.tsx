// Where a teacher prepares a class: its deals, how it plays, its card, and the drill as a file.
import type { Drill } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { randomHex } from '../../connection/random.ts';
import { Bar } from '../../ui/bar.tsx';
import { CardFileField } from '../../ui/card-file-field.tsx';
import { CardSelect } from '../../ui/card-select.tsx';
import { CARD_FIELD } from '../../ui/strings.ts';
import { useClassDraft } from './class-draft.ts';
import { FormFields, TermsFields } from './class-form.tsx';
import { type ClassCard, DealEditor } from './deal-editor.tsx';
import { type DealKind, newDeal, withDeal } from './draft.ts';
import { DrillFileButtons } from './drill-file-buttons.tsx';
import { PREPARE } from './strings.ts';

const newSeed = () => randomHex(32);
const KINDS: readonly DealKind[] = ['random', 'manual', 'sampled'];

export function PrepareScreen({ app }: { readonly app: App }) {
  const { drill, terms, card, problems, ...draft } = useClassDraft(app);
  const carried = draft.brought.value?.by === 'drill' ? PREPARE.cardCarried(draft.brought.value.name) : null;
  const otherwise = carried ?? (draft.ownCard.value === null ? CARD_FIELD.house : CARD_FIELD.own);
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
        <CardSelect
          id="class-own-card"
          value={draft.ownCard.value}
          brought={draft.brought.value?.name ?? null}
          onChange={draft.takeOwn}
        />
        <CardFileField
          key={draft.elsewhere.value}
          id="class-card"
          chosen={PREPARE.cardChosen}
          otherwise={otherwise}
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
          <DrillFileButtons
            file={draft.asFile}
            asksAbout={draft.asksAbout()}
            onMayShare={draft.mayShare}
            onFile={(file) => void draft.loadDrill(file)}
          />
        </div>
      </main>
    </>
  );
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
