// Lessons to play along: what one holds, where the teacher's choices lead, and what is no lesson, by deal and step.
import { describe, expect, it } from 'vitest';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { drillFileText } from '../../shared-engine/drill/file.ts';
import type { Drill, DrillDeal } from '../../shared-engine/drill/format.ts';
import { type LessonSoFar, lessonFile, lessonSoFar, readLesson } from '../../shared-engine/drill/lesson.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { sortFaces } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { dealOf, drillOf, sampledDeal } from '../kit/drills.ts';
import { WINDS_LESSON, WINDS_RACK } from '../kit/lessons.ts';
import { seedNamed } from '../kit/rounds.ts';

const WINDS_DEAL = WINDS_LESSON.deals[0]!;
const textOf = (drill: Drill) => drillFileText({ drill });
const with1 = (extra: Partial<DrillDeal>): string =>
  textOf({ ...WINDS_LESSON, deals: [{ ...WINDS_DEAL, ...extra }] });

function problemsOf(text: string): readonly string[] {
  const read = readLesson(text);
  return read.ok ? [] : read.problems.map(({ message }) => message);
}

function momentsOf(text: string) {
  const read = readLesson(text);
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(' '));
  return read.lesson.deals[0]!.moments;
}

describe('a lesson', () => {
  it('T1 takes along its card and nothing that is for the teacher alone', () => {
    const drill: Drill = { ...WINDS_LESSON, deals: [{ ...WINDS_DEAL, note: 'Stop here.' }] };
    const terms = { deadline: 60, racks: true, names: true, cardClosed: false };
    const file = lessonFile({ drill, class: terms });
    expect(file).toEqual({ drill: WINDS_LESSON, card: 'house' });
    const read = readLesson(drillFileText({ drill, class: terms }));
    expect(read).toMatchObject({ ok: true, file, lesson: { title: WINDS_LESSON.title } });
  });

  it('T2 goes on from the teacher’s choices, and ends behind the last words', () => {
    const [first, across, left, vote, ...more] = momentsOf(textOf(WINDS_LESSON));
    expect(more).toEqual([]);
    expect(first).toMatchObject({ step: 'first-right', words: 'Keep the 1 bam.', arrived: null });
    expect(first!.view.rack).toEqual(sortFaces(WINDS_RACK));
    expect(across!.view.record.steps).toMatchObject([
      { step: 'first-right', gave: ['west', 'green', 'red'] },
    ]);
    expect(left).toMatchObject({ teacher: { kind: 'pass', tiles: ['south'], blind: 2 } });
    expect(vote).toMatchObject({ step: 'vote', teacher: null, words: 'How would you vote?' });
  });

  it('T2 a choice that cannot be made is named by its deal and step', () => {
    const { comments } = WINDS_DEAL;
    const changed = (step: string, chosen: readonly Face[] | number) =>
      problemsOf(with1({ title: 'Winds', comments: { ...comments, [step]: { chosen } } }));
    expect(changed('first-right', ['white', 'red', 'green'])).toEqual([
      'Deal 1 (Winds): at first right what you choose cannot be done. You don’t hold one of those tiles. Choose from your own rack.',
    ]);
    expect(changed('first-across', ['dot-1'])).toEqual([
      'Deal 1 (Winds): at first across what you choose cannot be done. Choose 2 more tiles.',
    ]);
    expect(changed('second-left', ['dot-1', 'dot-2', 'dot-3'])).toEqual([
      'Deal 1 (Winds): at the vote say what you would choose; the lesson goes on from it to second left.',
    ]);
    const stopped = { ...comments, vote: { chosen: 0 }, 'second-left': { words: 'Never said.' } };
    expect(problemsOf(with1({ comments: stopped }))).toEqual([
      'Deal 1: with your choices the exchange does not come to second left; remove what you wrote there.',
    ]);
    const { 'first-across': _, ...gap } = comments!;
    expect(problemsOf(with1({ comments: gap }))).toEqual([
      'Deal 1: at first across say what you would choose; the lesson goes on from it to first left.',
    ]);
  });

  it('T2 a lesson in the making is known as far as its choices lead, and says why no further', () => {
    const kernel = createSwarKernel(houseCard());
    const soFar = (changed: NonNullable<DrillDeal['comments']>) =>
      lessonSoFar(WINDS_LESSON, { ...WINDS_DEAL, comments: { ...WINDS_DEAL.comments, ...changed } }, kernel)!;
    const steps = ({ moments }: LessonSoFar) =>
      moments.map(({ step, teacher }) => `${step} ${teacher === null ? 'open' : 'chosen'}`);
    expect(steps(soFar({})).slice(2)).toEqual(['first-left chosen', 'vote open']);
    const gap = soFar({ 'first-right': {} });
    expect(steps(gap)).toEqual(['first-right open']);
    expect(gap.whyNot('first-left')).toMatch(/^at first right say what you would choose; .* first across\.$/);
    const impossible = soFar({ 'first-across': { chosen: ['red'] } });
    expect(steps(impossible)).toEqual(['first-right chosen', 'first-across open']);
    expect(impossible.whyNot('vote')).toMatch(/^at first across what you choose cannot be done/);
    expect(lessonSoFar(WINDS_LESSON, sampledDeal({ pairs: 2 }), kernel)).toBeNull();
  });

  it('T3 tiles that are set to arrive are marked and come, or the lesson says which cannot', () => {
    const [, across, left] = momentsOf(textOf(WINDS_LESSON));
    expect(across!.arrived).toEqual({ tiles: ['dot-1', 'dot-2', 'dot-3'], isScripted: true });
    expect(left!.arrived).toMatchObject({ isScripted: false });
    const east: Face[] = ['east', 'dot-1', 'dot-2'];
    expect(problemsOf(with1({ scripted: { arrivals: { 'first-right': east } } }))).toEqual([
      'Deal 1: at first right east wind cannot arrive as you set it: the set has no more of it, or fewer tiles come; set another tile.',
    ]);
  });

  it('T1 what is no lesson is said in a sentence', () => {
    const said = { comments: { 'first-right': { words: 'Look.' } } };
    const random = dealOf({ kind: 'random', seed: seedNamed('bare') });
    expect(problemsOf(textOf(drillOf([random, { ...sampledDeal({ pairs: 2 }), ...said, id: 'b' }])))).toEqual(
      [
        'Deal 1: nothing is said of it; write what you would choose at its first step, or remove the deal.',
        'Deal 2: its rack is drawn to fit a description; pick the tiles that your words are about by hand.',
      ],
    );
    expect(problemsOf(textOf({ ...drillOf([{ ...random, ...said }]), form: 'tables' }))).toEqual([
      'Drill: it is for four players at a table, but a lesson is played alone; let everybody play alone.',
    ]);
    const { bots } = WINDS_LESSON;
    const slow = { ...bots, styles: ['typical', 'thoughtful', 'typical'] } as const;
    expect(problemsOf(textOf({ ...WINDS_LESSON, bots: slow }))[0]).toMatch(/^Drill: one of its bots plays/);
    expect(problemsOf('{"format":"quadrille-drill/2"}')[0]).toMatch(/uses version 2 of the drill format/);
    expect(problemsOf(textOf(WINDS_LESSON).slice(0, 200))[0]).toMatch(/cannot be read as JSON/);
    expect(problemsOf('{"song":1}')[0]).toMatch(/must be/);
  });

  it.each([
    ['characters that turn the text around', 'pass \u202Eeht'],
    ['a hundred thousand letters', 'a'.repeat(100_000)],
    ['nothing that can be seen', '\u200B'],
  ])('T1 words with %s are rejected with their deal and step', (_, words) => {
    expect(problemsOf(with1({ title: 'Winds', comments: { vote: { words } } }))).toEqual([
      'Deal 1 (Winds): "comments.vote.words" must be a text of 1 to 600 characters that can all be seen.',
    ]);
  });

  it('T1 markup in the words stays what was written', () => {
    const words = '<img src=x onerror=alert(1)> & <b>keep</b>';
    expect(momentsOf(with1({ comments: { 'first-right': { words } } }))[0]!.words).toBe(words);
  });
});
