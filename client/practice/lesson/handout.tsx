// The handout of a lesson, which is seen on paper alone: each deal with its racks, the teacher's choices and words.
import type { Lesson, LessonDeal, LessonMoment } from '../../../shared-engine/index.ts';
import { STEP_NAMES } from '../../room/step-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import { ChoiceShort } from '../question/choice-short.tsx';
import { Arrived, TeachersText } from './moment-view.tsx';
import { LESSON } from './strings.ts';

export function Handout({ lesson: { title, card, deals } }: { readonly lesson: Lesson }) {
  return (
    <article class="handout">
      <h1>{title}</h1>
      <p class="aside">{card.name}</p>
      {deals.map((deal, place) => (
        <PrintedDeal key={deal.id} deal={deal} name={LESSON.deal(place + 1, deals.length, deal.title)} />
      ))}
    </article>
  );
}

function PrintedDeal({ deal, name }: { readonly deal: LessonDeal; readonly name: string }) {
  return (
    <section>
      {name && <h2>{name}</h2>}
      <TeachersText text={deal.task} />
      {deal.isEast && <p>{LESSON.east}</p>}
      {deal.moments.map((moment) => (
        <PrintedMoment key={moment.step} moment={moment} />
      ))}
    </section>
  );
}

function PrintedMoment({ moment }: { readonly moment: LessonMoment }) {
  const { step, view, teacher, words } = moment;
  return (
    <div class="printed-moment">
      <h3>{STEP_NAMES[step]}</h3>
      <Arrived moment={moment} />
      <p>
        <TileRow tiles={view.rack} />
      </p>
      <p class="to-fill-in">{LESSON.yours}</p>
      {teacher !== null && (
        <p>
          {LESSON.teacher}: <ChoiceShort choice={teacher} />
        </p>
      )}
      <TeachersText text={words} />
    </div>
  );
}
