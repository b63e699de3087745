// What a teacher has entered for a class so far, what is wrong with it, and what can be done with it.
import { type Signal, useSignal } from '@preact/signals';
import { useMemo } from 'preact/hooks';
import {
  type CardFile,
  type ClassTerms,
  compileCard,
  type Drill,
  type DrillFile,
  houseCard,
  parseCard,
  readDrillFile,
} from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { randomHex } from '../../connection/random.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import {
  cardForTables,
  listOwnCards,
  markCardUsed,
  markMayShare,
  unplayable,
} from '../../storage/own-cards.ts';
import { CARD_SELECT } from '../../ui/strings.ts';
import { openClass } from '../model/requests.ts';
import type { ClassCard } from './deal-editor.tsx';
import { kernelOf } from './deal-tasks.ts';
import { emptyDrill } from './draft.ts';
import { PREPARE } from './strings.ts';

const HOUSE: ClassCard = { file: null, sections: houseCard().sections };

/** A card that came in a file, and in which. */
interface BroughtCard {
  readonly name: string;
  readonly by: 'file' | 'drill';
  readonly mayShare: boolean;
}

interface CardSignals {
  /** Key of the card on this device; null for another. */
  readonly ownCard: Signal<string | null>;
  readonly card: Signal<ClassCard>;
  readonly problems: Signal<readonly string[]>;
}

export function useClassDraft(app: App) {
  const drill = useSignal<Drill>(emptyDrill(() => randomHex(32)));
  const terms = useSignal<ClassTerms>({ deadline: null, racks: false, names: false, cardClosed: false });
  const busy = useSignal(false);
  const first = useMemo(() => ownClassCard(app.settings.peek().card), []);
  const ownCard = useSignal(first.key);
  const card = useSignal(first.card);
  const problems = useSignal<readonly string[]>(first.problems);
  const cards = useClassCard({ ownCard, card, problems });

  const change = (next: Drill) => {
    drill.value = next;
    problems.value = [];
  };
  const named = (): Drill => ({ ...drill.value, title: drill.value.title.trim() || PREPARE.untitled });
  const asFile = (): DrillFile => ({
    drill: named(),
    class: terms.value,
    card: card.value.file ?? 'house',
  });

  async function loadDrill(file: File) {
    const read = readDrillFile(await file.text(), kernelOf(card.value.file));
    if (!read.ok) {
      problems.value = [PREPARE.otherFile, ...read.problems.map(({ message }) => message)];
      return;
    }
    change(read.file.drill);
    if (read.file.class) terms.value = read.file.class;
    if (read.file.card === 'house') cards.takeOwn(null);
    else if (read.file.card) cards.bring(read.file.card, 'drill');
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

  return { drill, terms, card, ownCard, problems, busy, change, asFile, loadDrill, open, ...cards };
}

const classCardOf = (file: CardFile | null): ClassCard =>
  file === null ? HOUSE : { file, sections: compileCard(file).sections };

/** A card of this device; where it cannot be played, the house card and why. */
function ownClassCard(key: string | null) {
  const name = unplayable(lastingStorage, key);
  const parsed = name === null && key !== null ? parseCard(cardForTables(lastingStorage, key)) : null;
  const file = parsed?.ok ? parsed.card : null;
  return {
    key: file === null ? null : key,
    card: classCardOf(file),
    problems: name === null ? [] : [CARD_SELECT.unplayable(name)],
  };
}

/** The card of the class: the house card, one of this device, or one from a file. */
function useClassCard({ ownCard, card, problems }: CardSignals) {
  const brought = useSignal<BroughtCard | null>(null);
  /** Counts cards that were chosen elsewhere than in the field for files, which then forgets its own. */
  const elsewhere = useSignal(0);

  function takeOwn(key: string | null) {
    const own = ownClassCard(key);
    [brought.value, ownCard.value, card.value, problems.value] = [null, own.key, own.card, own.problems];
    elsewhere.value++;
  }

  function bring(file: CardFile, by: BroughtCard['by']) {
    ownCard.value = null;
    card.value = classCardOf(file);
    brought.value = { name: file.name, by, mayShare: false };
    if (by === 'drill') elsewhere.value++;
  }

  /** Why the card cannot be used, or null. */
  function takeCard(json: unknown): string | null {
    [brought.value, ownCard.value, card.value, problems.value] = [null, null, HOUSE, []];
    const parsed = json === null ? null : parseCard(json);
    if (parsed?.ok) bring(parsed.card, 'file');
    if (parsed === null || parsed.ok) return null;
    problems.value = parsed.problems.map(({ message }) => message);
    return PREPARE.otherCard;
  }

  /** Name of the card about which nobody has said yet whether it may be passed on. */
  function asksAbout(): string | null {
    if (brought.value) return brought.value.mayShare ? null : brought.value.name;
    const entry = listOwnCards(lastingStorage).find(({ key }) => key === ownCard.value);
    return entry && !entry.mayShare ? entry.name : null;
  }

  function mayShare() {
    if (brought.value) brought.value = { ...brought.value, mayShare: true };
    else if (ownCard.value !== null) markMayShare(lastingStorage, ownCard.value);
  }

  return { brought, elsewhere, takeOwn, takeCard, bring, asksAbout, mayShare };
}
