// What a teacher has entered for a class so far, what is wrong with it, and what can be done with it.
import { useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import { type ClassTerms, type Drill, type DrillFile, readDrillFile } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { randomHex } from '../../connection/random.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import type { DrillRow } from '../../storage/history/database.ts';
import { rowOfDrill } from '../../storage/history/teaching.ts';
import { markCardUsed } from '../../storage/own-cards.ts';
import { newDrillId, startClass, storedDrill, USUAL_CLASS } from '../model/library.ts';
import { useAutosave } from './autosave.ts';
import { firstCard, useClassCard } from './class-card.ts';
import { kernelOf } from './deal-tasks.ts';
import { classPartFor, emptyDrill } from './draft.ts';
import { PREPARE } from './strings.ts';

/** `stored` is the drill that is taken up again; null for a new one. */
export function useClassDraft(app: App, stored: DrillRow | null) {
  const file = useMemo(() => (stored === null ? null : storedDrill(stored.text)), []);
  const id = useSignal(stored?.id ?? newDrillId());
  const group = useSignal(stored?.group ?? '');
  const drill = useSignal<Drill>(file?.drill ?? emptyDrill(() => randomHex(32)));
  const terms = useSignal<ClassTerms>(file?.class ?? USUAL_CLASS);
  const busy = useSignal(false);
  const first = useMemo(() => firstCard(stored ? stored.ownCard : app.settings.peek().card, file?.card), []);
  const ownCard = useSignal(first.key);
  const card = useSignal(first.card);
  const problems = useSignal<readonly string[]>(first.problems);
  const cards = useClassCard({ ownCard, card, problems }, first.brought);

  const asFile = (): DrillFile => ({
    drill: drill.peek(),
    class: classPartFor(drill.peek(), terms.peek()),
    card: card.peek().file ?? 'house',
  });
  const { state: saved, flush } = useAutosave(
    app,
    () => [drill.value, terms.value, group.value, card.value],
    () => rowOfDrill(asFile(), { id: id.peek(), group: group.peek(), ownCard: ownCard.peek() }),
  );

  const change = (next: Drill) => {
    drill.value = next;
    problems.value = [];
  };
  const namedFile = (): DrillFile => {
    const title = drill.value.title.trim() || PREPARE.untitled;
    return { ...asFile(), drill: { ...drill.value, title } };
  };

  async function loadDrill(text: string) {
    const read = readDrillFile(text, kernelOf(card.value.file));
    if (!read.ok) {
      problems.value = [PREPARE.otherFile, ...read.problems.map(({ message }) => message)];
      return;
    }
    // What was here before stays among the drills of this device, the last letters typed too.
    flush();
    if (saved.value !== 'not-stored' || stored !== null) id.value = newDrillId();
    change(read.file.drill);
    if (read.file.class) terms.value = read.file.class;
    if (read.file.card === 'house') cards.takeOwn(null);
    else if (read.file.card) cards.bring(read.file.card, 'drill');
  }

  async function open() {
    if (busy.value) return;
    busy.value = true;
    const answer = await startClass(namedFile(), group.value.trim());
    busy.value = false;
    if (answer.ok) markCardUsed(lastingStorage, ownCard.value, new Date().toISOString().slice(0, 10));
    if (answer.ok) return app.go({ kind: 'class', code: answer.value.code, part: 'main' });
    problems.value = [answer.message, ...(answer.problems ?? [])];
  }

  const state = { drill, terms, group, card, ownCard, problems, busy, saved };
  return { ...state, change, namedFile, loadDrill, open, ...cards };
}

export type ClassDraft = ReturnType<typeof useClassDraft>;
