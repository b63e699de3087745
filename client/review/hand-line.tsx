// One line from the beginning of the exchange to its close: how far away the rack was, and toward which hands.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CompiledCard, Face, Review } from '../../shared-engine/index.ts';
import type { Room, Seated } from '../room/room.ts';
import { closestSections } from './closest-hands.ts';
import { away, HAND_LINE } from './strings.ts';

interface HandLineProps {
  readonly review: Pick<Review, 'toGoStart' | 'toGoEnd'>;
  readonly room: Room;
  readonly seated: Seated;
}

export function HandLine({ review: { toGoStart, toGoEnd }, room, seated: { view } }: HandLineProps) {
  const card = useSignal<CompiledCard | null>(null);
  useEffect(() => {
    void room.loadCard().then((loaded) => {
      card.value = loaded;
    });
  }, [room]);
  return (
    <div class="hand-line">
      <HandAt card={card.value} when={HAND_LINE.start} toGo={toGoStart} rack={view.record.start} />
      <svg class="arrow" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
        <path d="M3 10 H16 M11 4.500 L16.500 10 L11 15.500" />
      </svg>
      <HandAt card={card.value} when={HAND_LINE.end} toGo={toGoEnd} rack={view.rack} />
    </div>
  );
}

interface HandAtProps {
  /** Null until it is there; the line has its height already. */
  readonly card: CompiledCard | null;
  readonly when: string;
  readonly toGo: number;
  readonly rack: readonly Face[];
}

function HandAt({ card, when, toGo, rack }: HandAtProps) {
  return (
    <p>
      <b>
        {when}: {away(toGo)}
      </b>
      <span class="aside hand-name">{card && HAND_LINE.toward(closestSections(card, rack))}</span>
    </p>
  );
}
