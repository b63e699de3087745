// The same deal once more: play it differently, send it to a friend, see both times side by side.
import { useSignal } from '@preact/signals';
import type { ChoiceReview, Review } from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { dealKey, type SharedDeal } from '../app/routes/deal-link.ts';
import { PRACTICE } from '../practice/strings.ts';
import { optionName } from '../room/option-names.ts';
import type { Room, Seated } from '../room/room.ts';
import { tileCount } from '../tiles/tile-names.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { choiceName, gradeOf } from './strings.ts';

/** Null until the deal is open, and for a teacher's prepared deal, which never is. */
export function sharedDealOf({ view, you, table }: Seated, home: 'server' | 'page'): SharedDeal | null {
  if (view.stage.phase !== 'closed' || view.stage.seed === null) return null;
  const cardOf = home === 'server' && table.card.id !== 'house' ? table.code : null;
  return { deal: { seed: view.stage.seed, dealer: view.dealer }, seat: you, cardOf };
}

export function Again({ app, shared }: { readonly app: App; readonly shared: SharedDeal }) {
  const said = useSignal<string | null>(null);

  async function copy() {
    try {
      await navigator.clipboard.writeText(app.linkTo({ kind: 'deal', shared }));
      said.value = PRACTICE.copied;
    } catch {
      said.value = PRACTICE.copyByHand;
    }
  }

  return (
    <section class="panel again" aria-labelledby="again-title">
      <h2 id="again-title">{PRACTICE.again}</h2>
      <p>{PRACTICE.againAbout}</p>
      <div class="row">
        <button type="button" onClick={() => app.go({ kind: 'deal', shared })}>
          {PRACTICE.againButton}
        </button>
        <button type="button" onClick={() => void copy()}>
          {PRACTICE.shareButton}
        </button>
      </div>
      <p class="aside" role="status">
        {said.value ?? PRACTICE.shareAbout}
      </p>
    </section>
  );
}

interface SideBySideProps {
  readonly first: Review;
  readonly now: Review;
}

export function SideBySide({ first, now }: SideBySideProps) {
  const steps = [...first.choices, ...now.choices].reduce<Map<string, ChoiceReview>>(
    (known, choice) => known.set(choiceName(choice), choice),
    new Map(),
  );
  return (
    <section class="panel side-by-side" aria-labelledby="beside-title">
      <h2 id="beside-title">{PRACTICE.sideBySide}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{PRACTICE.step}</th>
            <th scope="col">{PRACTICE.first}</th>
            <th scope="col">{PRACTICE.now}</th>
          </tr>
        </thead>
        <tbody>
          {[...steps.keys()].map((name) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>
                <Chosen choice={first.choices.find((choice) => choiceName(choice) === name)} />
              </td>
              <td>
                <Chosen choice={now.choices.find((choice) => choiceName(choice) === name)} />
              </td>
            </tr>
          ))}
          <tr>
            <th scope="row">{PRACTICE.end}</th>
            <td>{tileCount(first.toGoEnd)} to go</td>
            <td>{tileCount(now.toGoEnd)} to go</td>
          </tr>
        </tbody>
      </table>
    </section>
  );
}

function Chosen({ choice }: { readonly choice: ChoiceReview | undefined }) {
  if (!choice) return <>–</>;
  return (
    <>
      {choice.kind === 'pass' ? (
        <TileRow tiles={choice.played.tiles} />
      ) : (
        optionName(choice.kind, choice.played)
      )}
      <br />
      <span class="aside">{gradeOf(choice).words}</span>
    </>
  );
}

/** Keeps the first play of a deal on this page and answers its review when a later play is there to compare. */
export function earlierReview(app: App, shared: SharedDeal, room: Room, review: Review): Review | null {
  return app.reviewBefore(dealKey(shared), room, review);
}
