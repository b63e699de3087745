// One pass looked at again: rack, pass, the best, the difference as a picture, the gift, two sentences.
import type { PassReview, Review } from '../../shared-engine/index.ts';
import { MOVES, neighbour } from '../../shared-engine/index.ts';
import { AIM, aimWords } from '../room/aim-strings.ts';
import type { Seated } from '../room/room.ts';
import { nameOf } from '../room/seat-names.ts';
import { sentenceList } from '../tiles/tile-names.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { Rivals } from './alternatives.tsx';
import { DeepNumbers } from './deep-numbers.tsx';
import { DeepWords } from './deep-sentences.tsx';
import { JUDGEMENT } from './deep-strings.ts';
import { FirstLook } from './first-look.tsx';
import { Scale } from './scale.tsx';
import { figure, giftName, giftWords, lossWords, REVIEW, scaleWords } from './strings.ts';

interface PassChoiceProps {
  readonly choice: PassReview;
  readonly review: Review;
  readonly seated: Seated;
  /** Family ids said before this pass. */
  readonly aim: readonly string[];
}

export function PassChoice({ choice, review, seated, aim }: PassChoiceProps) {
  const to = nameOf(seated.table, neighbour(review.seat, MOVES[choice.step].toward));
  const { judgement } = choice;
  const deep = judgement.depth === 'deep';
  return (
    <>
      {deep && <DeepWords judgement={judgement} />}
      <p class="verdict">{choice.words[0]}</p>
      {!deep && <p class="verdict">{choice.words[1]}</p>}
      {aimWords(aim, choice, review.families).map((sentence) => (
        <p key={sentence}>
          <b>{AIM.title}:</b> {sentence}
        </p>
      ))}
      <PassPair choice={choice} />
      {deep ? <Rivals kind="pass" judgement={judgement} /> : <FirstScale choice={choice} />}
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
      {deep ? (
        <>
          <DeepNumbers kind="pass" judgement={judgement} />
          <FirstLook>
            <p>{choice.words[1]}</p>
            <FirstScale choice={choice} />
            <Numbers choice={choice} />
          </FirstLook>
        </>
      ) : (
        <Numbers choice={choice} />
      )}
    </>
  );
}

/** The pass made, and beside it the one to compare it with, where there is one. */
function PassPair({ choice }: { readonly choice: PassReview }) {
  const other = comparedWith(choice);
  return (
    <div class="pass-pair">
      <figure>
        <figcaption>{REVIEW.passed}</figcaption>
        <TileRow tiles={choice.played.tiles} />
      </figure>
      {other ? (
        <figure>
          <figcaption>{other.name}</figcaption>
          <TileRow tiles={other.tiles} />
        </figure>
      ) : (
        <p class="aside">{choice.judgement.depth === 'deep' ? JUDGEMENT.sameAsAny : REVIEW.same}</p>
      )}
    </div>
  );
}

function comparedWith({ judgement, best, rank }: PassReview) {
  if (judgement.depth === 'quick') return rank === 1 ? null : { name: REVIEW.better, tiles: best.tiles };
  const rival = judgement.rival === null ? undefined : judgement.finalists[judgement.rival];
  if (!rival || judgement.verdict === 'as-good') return null;
  return { name: JUDGEMENT.rival[judgement.verdict], tiles: rival.tiles };
}

function FirstScale({ choice }: { readonly choice: PassReview }) {
  return (
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
  );
}

function Families({ choice, names }: { readonly choice: PassReview; readonly names: Review['families'] }) {
  const named = (ids: readonly string[]) =>
    ids.length === 0 ? REVIEW.none : sentenceList(ids.map((id) => names[id] ?? id));
  const kept = choice.open.filter((id) => choice.openAfter.includes(id));
  const lost = choice.open.filter((id) => !choice.openAfter.includes(id));
  // What the first look thought best is spoken of only as long as there is nothing better to go by.
  const first = choice.judgement.depth === 'quick';
  const could = first ? lost.filter((id) => choice.openAfterBest.includes(id)) : [];
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
