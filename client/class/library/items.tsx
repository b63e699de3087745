// One drill or one class in the list of a teacher, with its buttons.
import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import type { ClassRow, DrillRow } from '../../storage/history/database.ts';
import { FullNote } from '../../ui/full-note.tsx';
import { LONGEST_GROUP } from '../model/library.ts';
import { dayText, dealCount } from '../model/strings.ts';
import { SaveStoredDrill } from '../prepare/save-stored-drill.tsx';
import { PREPARE } from '../prepare/strings.ts';
import { LIBRARY } from './strings.ts';
import type { useLibrary } from './use-library.ts';

interface ItemProps<Row> {
  readonly app: App;
  readonly model: ReturnType<typeof useLibrary>;
  readonly row: Row;
}

export function DrillItem({ app, model, row }: ItemProps<DrillRow>) {
  const { id, title, group, deals, changedAt, text } = row;
  const name = title.trim() || PREPARE.untitled;
  const facts = [
    dealCount(deals),
    ...(group ? [LIBRARY.forGroup(group)] : []),
    LIBRARY.changed(dayText(changedAt)),
  ];
  return (
    <li>
      <p>
        <PageLink app={app} route={{ kind: 'prepare', drill: id }}>
          {name}
        </PageLink>
        <span class="aside">{facts.join(' · ')}</span>
      </p>
      <Buttons name={name}>
        <button type="button" onClick={() => void model.run(text, group)}>
          {LIBRARY.run}
        </button>
        <button type="button" onClick={() => model.copy(row)}>
          {LIBRARY.copy}
        </button>
        <SaveStoredDrill words={LIBRARY.save} text={text} ownCard={row.ownCard} />
        <button type="button" onClick={() => model.removeDrill(row)}>
          {LIBRARY.remove}
        </button>
      </Buttons>
    </li>
  );
}

export function ClassItem({ app, model, row }: ItemProps<ClassRow>) {
  const { code, title, group, openedAt, drill } = row;
  return (
    <li>
      <p>
        <PageLink app={app} route={{ kind: 'class', code, part: 'main' }}>
          {title || code}
        </PageLink>
        <span class="aside">
          {LIBRARY.opened(dayText(openedAt))} · {code}
        </span>
      </p>
      <Buttons name={title || code}>
        <PageLink app={app} route={{ kind: 'class', code, part: 'report' }} button>
          {LIBRARY.report}
        </PageLink>
        {drill !== null && (
          <>
            <button type="button" onClick={() => void model.run(drill, group)}>
              {LIBRARY.again}
            </button>
            <button type="button" onClick={() => model.copyOfClass(drill, group)}>
              {LIBRARY.copyDrill}
            </button>
          </>
        )}
        <GroupButton group={group} onGroup={(next) => model.group(row, next)} />
        <button type="button" onClick={() => model.removeClass(row)}>
          {LIBRARY.forget}
        </button>
      </Buttons>
    </li>
  );
}

function Buttons({ name, children }: { readonly name: string; readonly children: ComponentChildren }) {
  return (
    <fieldset class="row" aria-label={name}>
      {children}
    </fieldset>
  );
}

interface GroupButtonProps {
  readonly group: string;
  readonly onGroup: (group: string) => void;
}

/** The group that a class was given to, which may be another one than at first. */
function GroupButton({ group, onGroup }: GroupButtonProps) {
  const text = useSignal<string | null>(null);
  if (text.value === null) {
    return (
      <button
        type="button"
        onClick={() => {
          text.value = group;
        }}
      >
        {LIBRARY.group}
      </button>
    );
  }
  return (
    <form
      class="row"
      onSubmit={(event) => {
        event.preventDefault();
        onGroup((text.value ?? '').trim());
        text.value = null;
      }}
    >
      <input
        aria-label={LIBRARY.groupName}
        maxLength={LONGEST_GROUP}
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
      />
      <button type="submit">{LIBRARY.groupSet}</button>
      <FullNote text={text.value} most={LONGEST_GROUP} />
    </form>
  );
}
