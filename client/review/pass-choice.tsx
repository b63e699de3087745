// The review of one pass: rack, pass, the better one, the alternatives on a scale, what it gave away.
import {
  type ChoiceStory,
  type Face,
  type PassReview,
  type Review,
  toldVerdict,
} from '../../shared-engine/index.ts';
import { sentenceList } from '../tiles/tile-names.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { twoPlaces } from '../ui/numbers.ts';
import { Alternatives } from './alternatives.tsx';
import { Sentences } from './choice-sentences.tsx';
import { DeepNumbers } from './deep-numbers.tsx';
import { DEEP } from './deep-strings.ts';
import { Scale } from './scale.tsx';
import { aimSentences, lossSentence, REVIEW, riskName, scaleDescription } from './strings.ts';

interface PassChoiceProps {
  readonly choice: PassReview;
  readonly story: ChoiceStory;
  readonly review: Review;
  /** Section ids said before this pass. */
  readonly aim: readonly string[];
  /** The pass that the coach named before this one; null where it named none. */
  readonly coached: readonly Face[] | null;
}

export function PassChoice({ choice, story, review, aim, coached }: PassChoiceProps) {
  const { analysis } = choice;
  const deep = analysis.depth === 'deep';
  return (
    <>
      <Sentences story={story} />
      {aimSentences(aim, choice, review.sections).map((sentence) => (
        <p key={sentence}>
          <b>{REVIEW.aim}:</b> {sentence}
        </p>
      ))}
      <PassPair choice={choice} />
      {deep ? (
        <Alternatives kind="pass" analysis={analysis} rows={story.rows} coached={coached} />
      ) : (
        <FirstScale choice={choice} />
      )}
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
      <Sections choice={choice} names={review.sections} />
      {deep ? <DeepNumbers kind="pass" analysis={analysis} rows={story.rows} /> : <Numbers choice={choice} />}
    </>
  );
}

/** The pass made, and beside it the one to compare it with, where there is one; that there is none is told in words. */
export function PassPair({ choice }: { readonly choice: PassReview }) {
  const other = comparedWith(choice);
  return (
    <div class="pass-pair">
      <figure>
        <figcaption>{REVIEW.passed}</figcaption>
        <TileRow tiles={choice.played.tiles} />
      </figure>
      {other && (
        <figure>
          <figcaption>{other.name}</figcaption>
          <TileRow tiles={other.tiles} />
        </figure>
      )}
    </div>
  );
}

function comparedWith({ analysis, best, rank }: PassReview) {
  if (analysis.depth === 'quick') return rank === 1 ? null : { name: REVIEW.better, tiles: best.tiles };
  const other = analysis.bestAlternative === null ? undefined : analysis.finalists[analysis.bestAlternative];
  const verdict = toldVerdict(analysis);
  if (!other || verdict === 'best' || verdict === 'just-as-good') return null;
  return { name: DEEP.bestAlternative[verdict], tiles: other.tiles };
}

function FirstScale({ choice }: { readonly choice: PassReview }) {
  return (
    <figure>
      <figcaption>
        {REVIEW.scale}. {lossSentence(choice.loss)}
      </figcaption>
      <Scale
        values={choice.alternatives.map(({ nearness }) => nearness)}
        played={choice.played.nearness}
        best={choice.best.nearness}
        words={scaleDescription(choice)}
      />
    </figure>
  );
}

function Sections({ choice, names }: { readonly choice: PassReview; readonly names: Review['sections'] }) {
  const named = (ids: readonly string[]) =>
    ids.length === 0 ? REVIEW.none : sentenceList(ids.map((id) => names[id] ?? id));
  const kept = choice.sectionsInReach.filter((id) => choice.sectionsInReachAfter.includes(id));
  const lost = choice.sectionsInReach.filter((id) => !choice.sectionsInReachAfter.includes(id));
  // The best pass of the first answer is named only until the deep analysis is there.
  const first = choice.analysis.depth === 'quick';
  const could = first ? lost.filter((id) => choice.sectionsInReachAfterBest.includes(id)) : [];
  return (
    <section class="sections">
      <h4>{REVIEW.sections}</h4>
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
            <th scope="col">{REVIEW.risk}</th>
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
                <td>{twoPlaces(alternative.nearness)}</td>
                <td>{alternative.toGo}</td>
                <td>{riskName(alternative.risk)}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </details>
  );
}
