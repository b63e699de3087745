// One pass looked at again: rack, pass, the best, the difference as a picture, the gift, two sentences.
import type { PassReview, Review } from '../../../shared-engine/index.ts';
import { MOVES, neighbour } from '../../../shared-engine/index.ts';
import type { Seated } from '../../model/room.ts';
import { AIM, aimWords } from '../../words/aim.ts';
import { nameOf } from '../../words/people.ts';
import { figure, giftName, giftWords, lossWords, REVIEW, scaleWords } from '../../words/review.ts';
import { sentenceList } from '../../words/tiles.ts';
import { TileRow } from '../tile-row.tsx';
import { Scale } from './scale.tsx';

interface PassChoiceProps {
  readonly choice: PassReview;
  readonly review: Review;
  readonly seated: Seated;
  /** Family ids said before this pass. */
  readonly aim: readonly string[];
}

export function PassChoice({ choice, review, seated, aim }: PassChoiceProps) {
  const to = nameOf(seated.table, neighbour(review.seat, MOVES[choice.step].toward));
  const isBest = choice.rank === 1;
  return (
    <>
      <p class="verdict">{choice.words[0]}</p>
      <p class="verdict">{choice.words[1]}</p>
      {aimWords(aim, choice, review.families).map((sentence) => (
        <p key={sentence}>
          <b>{AIM.title}:</b> {sentence}
        </p>
      ))}
      <div class="pass-pair">
        <figure>
          <figcaption>{isBest ? REVIEW.both : REVIEW.passed}</figcaption>
          <TileRow tiles={choice.played.tiles} />
        </figure>
        {isBest ? (
          <p class="aside">{REVIEW.same}</p>
        ) : (
          <figure>
            <figcaption>{REVIEW.better}</figcaption>
            <TileRow tiles={choice.best.tiles} />
          </figure>
        )}
      </div>
      <figure>
        <figcaption>
          {REVIEW.scale}. {lossWords(choice.loss)}
        </figcaption>
        <Scale
          values={choice.alternatives.map(({ nearness }) => nearness)}
          played={choice.played.nearness}
          best={choice.best.nearness}
          words={scaleWords(choice)}
        />
      </figure>
      <figure>
        <figcaption>{REVIEW.rack}</figcaption>
        <TileRow tiles={choice.rack} marked={choice.played.tiles} />
      </figure>
      {choice.received.length > 0 && (
        <figure>
          <figcaption>{REVIEW.received}</figcaption>
          <TileRow tiles={choice.received} />
        </figure>
      )}
      <p>{giftWords(choice.played.gift, to)}</p>
      <Families choice={choice} names={review.families} />
      <Numbers choice={choice} />
    </>
  );
}

function Families({ choice, names }: { readonly choice: PassReview; readonly names: Review['families'] }) {
  const named = (ids: readonly string[]) =>
    ids.length === 0 ? REVIEW.none : sentenceList(ids.map((id) => names[id] ?? id));
  const kept = choice.open.filter((id) => choice.openAfter.includes(id));
  const lost = choice.open.filter((id) => !choice.openAfter.includes(id));
  const could = lost.filter((id) => choice.openAfterBest.includes(id));
  return (
    <section class="families">
      <h4>{REVIEW.families}</h4>
      <dl>
        <dt>{REVIEW.kept}</dt>
        <dd>{named(kept)}</dd>
        <dt>{REVIEW.lost}</dt>
        <dd>{named(lost)}</dd>
        {could.length > 0 && (
          <>
            <dt>{REVIEW.couldKeep}</dt>
            <dd>{named(could)}</dd>
          </>
        )}
      </dl>
    </section>
  );
}

function Numbers({ choice }: { readonly choice: PassReview }) {
  return (
    <details class="panel">
      <summary>{REVIEW.numbers}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{REVIEW.pass}</th>
            <th scope="col">{REVIEW.nearness}</th>
            <th scope="col">{REVIEW.toGo}</th>
            <th scope="col">{REVIEW.gift}</th>
          </tr>
        </thead>
        <tbody>
          {choice.alternatives.map((alternative, index) => {
            const mine = alternative.tiles.join() === choice.played.tiles.join();
            return (
              <tr key={alternative.tiles.join()} class={mine ? 'mine' : ''}>
                <th scope="row">
                  <TileRow tiles={alternative.tiles} />
                  {mine && <span class="tag">{REVIEW.you}</span>}
                  {index === 0 && <span class="tag">{REVIEW.best}</span>}
                </th>
                <td>{figure(alternative.nearness)}</td>
                <td>{alternative.toGo}</td>
                <td>{giftName(alternative.gift)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
