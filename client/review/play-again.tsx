// The same deal once more: play it differently, send it to a friend, see both times side by side.
import { useSignal } from '@preact/signals';
import {
  type ChoiceReview,
  choiceVerdict,
  type Four,
  type Review,
  type SeatView,
} from '../../shared-engine/index.ts';
import type { App } from '../app/routes/app.ts';
import { dealKey, exchangeOf, ownKeyIn, type SharedDeal } from '../app/routes/deal-link.ts';
import type { Route } from '../app/routes/route.ts';
import { ShareButton } from '../room/copy-link.tsx';
import type { RoomState, Seated } from '../room/room.ts';
import { optionName } from '../room/step-names.ts';
import { VERDICTS } from '../room/verdicts.ts';
import { storeBotNames } from '../storage/bot-names.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { forgetPageRound } from '../storage/page-round.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { away, choiceName, PLAY_AGAIN } from './strings.ts';

/** Null unless the close has opened the deal: not where racks stay private, nor for a teacher's prepared deal. */
export function sharedDealOf(
  { view, you, table }: Seated,
  home: RoomState['home'],
  route: Route,
): SharedDeal | null {
  if (view.stage.phase !== 'closed' || view.stage.opened === null) return null;
  const { seed } = view.stage.opened;
  const ofServer = home !== 'page' && table.card.id !== 'house' ? table.code : null;
  const cardOf = route.kind === 'deal' ? route.shared.cardOf : ofServer;
  return { deal: { seed, dealer: view.dealer }, seat: you, cardOf, ways: exchangeOf(view.terms) };
}

/** Why a deal of chance is not offered again; says nothing of a prepared one, which the deal check does. */
export function NotAgain({ view }: { readonly view: SeatView }) {
  if (view.commitment === null || view.terms.revealRacks) return null;
  return <p class="panel aside">{PLAY_AGAIN.private}</p>;
}

interface PlayAgainProps {
  readonly app: App;
  readonly shared: SharedDeal;
  /** Of the bots in this round, by seat; empty where a person sat. */
  readonly botNames: Four<string>;
}

export function PlayAgain({ app, shared, botNames }: PlayAgainProps) {
  const message = useSignal<string | null>(null);

  async function copy() {
    try {
      await navigator.clipboard.writeText(app.linkTo({ kind: 'deal', shared }));
      message.value = PLAY_AGAIN.copied;
    } catch {
      message.value = PLAY_AGAIN.copyByHand;
    }
  }

  return (
    <section class="panel again" aria-labelledby="again-title">
      <h2 id="again-title">{PLAY_AGAIN.title}</h2>
      <p>{PLAY_AGAIN.about}</p>
      <div class="row">
        <button
          type="button"
          onClick={() => {
            forgetPageRound(lastingStorage);
            storeBotNames(lastingStorage, dealKey(shared), botNames);
            app.go({ kind: 'deal', shared });
          }}
        >
          {PLAY_AGAIN.button}
        </button>
        <ShareButton link={app.linkTo({ kind: 'deal', shared })} text={PLAY_AGAIN.shareText} />
        <button type="button" onClick={() => void copy()}>
          {PLAY_AGAIN.shareButton}
        </button>
      </div>
      <p class="aside" role="status">
        {message.value ?? PLAY_AGAIN.shareAbout}
      </p>
      {shared.cardOf !== null && ownKeyIn(shared.cardOf) !== null && (
        <p class="aside">{PLAY_AGAIN.ownCard}</p>
      )}
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
      <h2 id="beside-title">{PLAY_AGAIN.sideBySide}</h2>
      <table>
        <thead>
          <tr>
            <th scope="col">{PLAY_AGAIN.step}</th>
            <th scope="col">{PLAY_AGAIN.first}</th>
            <th scope="col">{PLAY_AGAIN.now}</th>
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
            <th scope="row">{PLAY_AGAIN.end}</th>
            <td>{away(first.toGoEnd)}</td>
            <td>{away(now.toGoEnd)}</td>
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
      <span class="aside">{VERDICTS[choiceVerdict(choice)].name}</span>
    </>
  );
}
