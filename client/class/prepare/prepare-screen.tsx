// Where a teacher prepares a class: its file and card, its deals, and how it plays.
import { useEffect, useState } from 'preact/hooks';
import { DRILL_LIMITS } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import type { DrillRow } from '../../storage/history/database.ts';
import { readDrill } from '../../storage/history/teaching.ts';
import { Bar } from '../../ui/bar.tsx';
import { CardFileField } from '../../ui/card-file-field.tsx';
import { CardSelect } from '../../ui/card-select.tsx';
import { FileButton } from '../../ui/file-button.tsx';
import { FullNote } from '../../ui/full-note.tsx';
import { CARD_FIELD } from '../../ui/strings.ts';
import { LONGEST_GROUP } from '../model/library.ts';
import { TEACHING } from '../model/strings.ts';
import { PublishForm } from '../published/publish-form.tsx';
import { type ClassDraft, useClassDraft } from './class-draft.ts';
import { FormFields, TermsFields } from './class-form.tsx';
import { DealList } from './deal-list.tsx';
import { LessonForm } from './lesson-form.tsx';
import { SaveDrillButton } from './save-drill-button.tsx';
import { PREPARE, savedWords } from './strings.ts';

interface PrepareScreenProps {
  readonly app: App;
  /** Id of a drill on this device; null for a new one. */
  readonly drill: string | null;
}

type Found = { readonly row: DrillRow | null } | 'looking' | 'gone';

export function PrepareScreen({ app, drill }: PrepareScreenProps) {
  const [found, setFound] = useState<Found>(drill === null ? { row: null } : 'looking');
  useEffect(() => {
    if (drill === null) return;
    void readDrill(drill).then((read) => setFound(read.ok && read.value ? { row: read.value } : 'gone'));
  }, [drill]);
  return (
    <>
      <Bar app={app} home />
      <main class="class-page prepare">
        <header>
          <h1>{PREPARE.title}</h1>
          <p>{PREPARE.about}</p>
          <p>
            <PageLink app={app} route={{ kind: 'teaching' }}>
              {TEACHING.title}
            </PageLink>
          </p>
        </header>
        {found === 'looking' && <p role="status">{PREPARE.opening}</p>}
        {found === 'gone' && <p role="alert">{PREPARE.gone}</p>}
        {typeof found === 'object' && <Draft app={app} stored={found.row} />}
      </main>
    </>
  );
}

function Draft({ app, stored }: { readonly app: App; readonly stored: DrillRow | null }) {
  const draft = useClassDraft(app, stored);
  const { drill, terms, card } = draft;
  return (
    <>
      <section class="draft-head" aria-label={PREPARE.drill}>
        <TextField
          id="drill-title"
          label={PREPARE.drillTitle}
          most={DRILL_LIMITS.title}
          {...titleOf(draft)}
        />
        <TextField
          id="drill-group"
          label={PREPARE.group}
          most={LONGEST_GROUP}
          value={draft.group.value}
          onText={(text) => {
            draft.group.value = text;
          }}
        />
        <div class="row">
          <FileButton words={PREPARE.load} onFile={(file) => void file.text().then(draft.loadDrill)} />
          <SaveDrillButton
            words={PREPARE.save}
            file={draft.namedFile}
            asksAbout={draft.asksAbout()}
            onMayShare={draft.mayShare}
          />
        </div>
        <p class="aside" role="status">
          {savedWords(draft.saved.value)}
        </p>
        <CardFields draft={draft} />
      </section>
      <DealList drill={drill.value} card={card.value} isNew={stored === null} onChange={draft.change} />
      <FormFields drill={drill.value} onChange={draft.change} />
      <TermsFields
        form={drill.value.form}
        terms={terms.value}
        onChange={(next) => {
          terms.value = next;
        }}
      />
      <Problems problems={draft.problems.value} />
      <div class="row">
        <button
          type="button"
          class="primary"
          aria-disabled={draft.busy.value}
          onClick={() => void draft.open()}
        >
          {PREPARE.open}
        </button>
      </div>
      <PublishForm app={app} file={draft.namedFile} card={card.value.file} />
      <LessonForm
        app={app}
        file={draft.namedFile()}
        asksAbout={draft.asksAbout()}
        onMayShare={draft.mayShare}
      />
    </>
  );
}

function titleOf({ drill, change }: ClassDraft) {
  const onText = (title: string) => change({ ...drill.value, title });
  return { value: drill.value.title, onText };
}

interface TextFieldProps {
  readonly id: string;
  readonly label: string;
  readonly most: number;
  readonly value: string;
  readonly onText: (text: string) => void;
}

function TextField({ id, label, most, value, onText }: TextFieldProps) {
  return (
    <div class="field">
      <label for={id}>{label}</label>
      <input id={id} maxLength={most} value={value} onInput={(event) => onText(event.currentTarget.value)} />
      <FullNote text={value} most={most} />
    </div>
  );
}

function CardFields({ draft }: { readonly draft: ClassDraft }) {
  const { brought, ownCard, elsewhere } = draft;
  const carried = brought.value?.by === 'drill' ? PREPARE.cardCarried(brought.value.name) : null;
  const otherwise = carried ?? (ownCard.value === null ? CARD_FIELD.house : CARD_FIELD.own);
  return (
    <>
      <CardSelect
        id="class-own-card"
        value={ownCard.value}
        brought={brought.value?.name ?? null}
        onChange={draft.takeOwn}
      />
      <CardFileField
        key={elsewhere.value}
        id="class-card"
        chosen={PREPARE.cardChosen}
        otherwise={otherwise}
        onCard={draft.takeCard}
      />
    </>
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
