// What is said of an answer: its verdict, what there was to choose, and why.
import {
  type BestBeside,
  type ChoiceReview,
  type ChoiceStory,
  choiceVerdict,
  type Face,
  namedAlternative,
} from '../../../shared-engine/index.ts';
import { VERDICTS } from '../../room/verdicts.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { QUESTION } from './strings.ts';

interface JudgedChoiceProps {
  readonly choice: ChoiceReview;
  readonly story: ChoiceStory;
  /** Whose pass it is; one's own where left out. */
  readonly whose?: string | undefined;
  /** The best beside a pass that is about as good, where it is told. */
  readonly best?: BestBeside | null;
}

export function JudgedChoice({ choice, story, whose = QUESTION.yours, best = null }: JudgedChoiceProps) {
  const better = betterTiles(choice);
  // What was done and what the first look says of it come first.
  const sentences = story.sentences.toSpliced(2, 0, ...(best?.sentences ?? []));
  return (
    <article class="judged">
      <h3>{VERDICTS[story.verdict].name}</h3>
      {choice.kind === 'pass' && (
        <div class="judged-tiles">
          <figure>
            <figcaption>{whose}</figcaption>
            <TileRow tiles={choice.played.tiles} />
          </figure>
          {better && (
            <figure>
              <figcaption>{QUESTION.better}</figcaption>
              <TileRow tiles={better} />
            </figure>
          )}
          {best && (
            <figure>
              <figcaption>{QUESTION.best}</figcaption>
              <TileRow tiles={best.tiles} />
            </figure>
          )}
        </div>
      )}
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </article>
  );
}

/** Null where nothing better is told. */
function betterTiles(choice: ChoiceReview): readonly Face[] | null {
  const verdict = choiceVerdict(choice);
  if (verdict !== 'costly' && verdict !== 'a-little-worse') return null;
  return namedAlternative(choice)?.tiles ?? null;
}
