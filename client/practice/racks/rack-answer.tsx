// What is said of one answer: the verdict on a pass with the best beside it, or how far each section is.
import { bestAtFirstLook } from '../../../shared-engine/index.ts';
import { JudgedChoice } from '../question/judged-choice.tsx';
import type { RackAnswer } from './model.ts';
import { RACKS, sectionsSentence } from './strings.ts';

export function RackAnswerView({ answer }: { readonly answer: RackAnswer }) {
  if (answer.kind === 'pass') {
    const { choices, story } = answer.review;
    return (
      <>
        {choices.map((choice, place) => (
          <JudgedChoice
            key={choice.kind}
            choice={choice}
            story={story.choices[place]!}
            best={bestAtFirstLook(choice)}
          />
        ))}
      </>
    );
  }
  const { named, distances } = answer;
  return (
    <article class="judged">
      <h3>{sectionsSentence(named, distances)}</h3>
      <table class="distances">
        <caption>{RACKS.distance}</caption>
        <tbody>
          {distances.map(({ id, name, toGo }) => (
            <tr key={id} class={named.includes(id) ? 'mine' : ''}>
              <th scope="row">{name}</th>
              <td>{toGo} away</td>
            </tr>
          ))}
        </tbody>
      </table>
    </article>
  );
}
