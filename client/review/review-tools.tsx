// Taking a review along: read out by the browser's own voice, printed with its tiles, saved or sent as a text.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { Review } from '../../shared-engine/index.ts';
import { VERDICTS } from '../room/verdicts.ts';
import { saveFile } from '../ui/save-file.ts';
import { PassPair } from './pass-choice.tsx';
import { reviewText, spokenSentences } from './review-text.ts';
import { choiceName, TOOLS } from './strings.ts';

export function ReviewTools({ review }: { readonly review: Review }) {
  const speaking = useSignal(false);
  const printing = useSignal(false);
  const canSpeak = 'speechSynthesis' in window;
  // Whoever leaves the page does not want to hear the rest.
  useEffect(() => () => window.speechSynthesis?.cancel(), []);

  function speak() {
    const { speechSynthesis } = window;
    speechSynthesis.cancel();
    speaking.value = !speaking.value;
    if (!speaking.value) return;
    const sentences = spokenSentences(review);
    for (const [nth, sentence] of sentences.entries()) {
      const utterance = new SpeechSynthesisUtterance(sentence);
      utterance.lang = 'en-US';
      if (nth === sentences.length - 1) utterance.onend = () => (speaking.value = false);
      speechSynthesis.speak(utterance);
    }
  }

  function print() {
    printing.value = true;
    // The page for the printer has to be drawn first.
    setTimeout(() => {
      window.print();
      printing.value = false;
    }, 50);
  }

  const share = () => navigator.share({ text: reviewText(review) }).catch(() => {});
  return (
    <>
      <div class="row review-tools">
        {canSpeak && (
          <button type="button" aria-pressed={speaking.value} onClick={speak}>
            {speaking.value ? TOOLS.stop : TOOLS.read}
          </button>
        )}
        <button type="button" onClick={print}>
          {TOOLS.print}
        </button>
        <button type="button" onClick={() => saveFile('review.txt', 'text/plain', reviewText(review))}>
          {TOOLS.save}
        </button>
        {'share' in navigator && (
          <button type="button" onClick={() => void share()}>
            {TOOLS.share}
          </button>
        )}
      </div>
      {printing.value && <PrintedSteps review={review} />}
    </>
  );
}

/** Every step with its tiles, which on the screen is opened one at a time. */
function PrintedSteps({ review }: { readonly review: Review }) {
  return (
    <section class="printed-steps">
      {review.choices.map((choice, place) => {
        const story = review.story.choices[place];
        return (
          <section key={`${choice.kind}-${choice.step}`}>
            <h3>
              {choiceName(choice)}: {story && VERDICTS[story.verdict].name}
            </h3>
            {choice.kind === 'pass' && <PassPair choice={choice} />}
            <p>{story?.sentences.join(' ')}</p>
          </section>
        );
      })}
    </section>
  );
}
