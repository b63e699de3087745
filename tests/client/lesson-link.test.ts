// A lesson on its way to whoever plays it along: its link, a rack from the table in it, the two judgements.
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { packText } from '../../client/app/routes/packed-text.ts';
import { pathOf } from '../../client/app/routes/route.ts';
import { withArrival } from '../../client/class/prepare/draft.ts';
import {
  agreement,
  dealAfter,
  isFaulted,
  isSameChoice,
  momentAt,
  placeKey,
  unpackLesson,
} from '../../client/practice/lesson/play.ts';
import { LESSON } from '../../client/practice/lesson/strings.ts';
import { lessonOfTable } from '../../client/practice/own-tiles/drill-of-table.ts';
import { EMPTY_TABLE, type OwnTable } from '../../client/practice/own-tiles/own-table.ts';
import { createJudge } from '../../client/practice/question/judged.ts';
import { drillFileText } from '../../shared-engine/drill/file.ts';
import type { Drill, DrillDeal } from '../../shared-engine/drill/format.ts';
import { lessonText, readLesson } from '../../shared-engine/drill/lesson.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import type { AnswerChoice } from '../../shared-engine/rules/exchange/command.ts';
import { STEPS } from '../../shared-engine/rules/exchange/schedule.ts';
import { layAll } from '../../shared-engine/rules/laid/laid-exchange.ts';
import { FACES, type Face } from '../../shared-engine/rules/tiles/face.ts';
import { sampleDeepAnalysis } from '../kit/classes.ts';
import { dealOf, drillOf } from '../kit/drills.ts';
import { WINDS_LESSON, WINDS_RACK } from '../kit/lessons.ts';
import { seedNamed } from '../kit/rounds.ts';

function windsLesson() {
  const read = readLesson(drillFileText({ drill: WINDS_LESSON }));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.lesson;
}

/** Six deals with a rack, arrivals, a choice and about three lines of English at every step. */
function wordyLesson(): Drill {
  const prose = readFileSync(new URL('../../shared-engine/RULES.md', import.meta.url), 'utf8');
  const random = stream('lesson', 'tiles of a wordy lesson');
  const tiles = (count: number): readonly Face[] =>
    Array.from({ length: count }, () => FACES[random.below(FACES.length - 1)]!);
  const deals = Array.from({ length: 6 }, (_, deal): DrillDeal => {
    const words = (step: number) => prose.slice((deal * 9 + step) * 170, (deal * 9 + step + 1) * 170);
    return dealOf(
      { kind: 'manual', racks: [tiles(13), [], [], []], seed: seedNamed(`wordy ${deal}`) },
      {
        id: `deal-${deal + 1}`,
        scripted: {
          arrivals: { 'first-right': tiles(3), 'first-across': tiles(3), 'first-left': tiles(3) },
        },
        comments: Object.fromEntries(
          STEPS.map((step, nth) => [
            step,
            { chosen: step === 'vote' || step === 'courtesy-ask' ? 1 : tiles(3), words: words(nth) },
          ]),
        ),
      },
    );
  });
  return drillOf(deals);
}

describe('the link of a lesson', () => {
  it('T5 holds all of it behind the #, where no server is told', async () => {
    const text = lessonText({ drill: WINDS_LESSON });
    const link = new URL(pathOf({ kind: 'lesson-link', packed: await packText(text) }), 'http://table.test');
    expect(link.pathname + link.search).toBe('/');
    const unpacked = await unpackLesson(link.hash.slice('#lesson='.length));
    expect(unpacked).toEqual({ ok: true, text });
    expect(readLesson(text)).toMatchObject({ ok: true, lesson: { title: WINDS_LESSON.title } });
    expect(await unpackLesson('')).toBeNull();
    const [, packed = ''] = link.hash.split('=');
    const throughMessages = `${packed.slice(0, 70)}\n ${packed.slice(70, 90)}%20${packed.slice(90)}).`;
    expect(await unpackLesson(throughMessages)).toEqual({ ok: true, text });
  });

  it('T5 six deals with words at every step take less than 8 KB', async () => {
    const packed = await packText(lessonText({ drill: wordyLesson() }));
    expect(packed.length).toBeLessThan(8 * 1024);
  });

  it('T5 is rejected in words when it is torn, foreign or of a later version', async () => {
    const packed = await packText(lessonText({ drill: WINDS_LESSON }));
    const said = async (text: string) => {
      const unpacked = await unpackLesson(text);
      return unpacked === null || unpacked.ok ? 'a lesson' : LESSON[unpacked.why];
    };
    expect(await said(packed.slice(0, -2))).toMatch(/^Part of this lesson link is missing\./);
    expect(await said(packed.replace(/^1/, '2'))).toMatch(/newer Quadrille/);
    expect(await said(packed.slice(2))).toMatch(/no lesson link/);
  });
});

describe('a lesson in the making', () => {
  it('T3 what comes is set step by step, and taken out again', () => {
    const deal = dealOf({ kind: 'manual', racks: [[], [], [], []], seed: seedNamed('set') });
    const set = withArrival(deal, 'first-right', ['dot-1']);
    expect(set.scripted).toEqual({ arrivals: { 'first-right': ['dot-1'] } });
    expect(withArrival(set, 'first-right', [])).toEqual(deal);
    const stopped: DrillDeal = { ...set, scripted: { arrivals: { 'first-right': ['dot-1'] }, stopped: [2] } };
    expect(withArrival(stopped, 'first-right', []).scripted).toEqual({ arrivals: {}, stopped: [2] });
  });

  it('T2 a rack from the table is a lesson with the choices made there', () => {
    const pass: AnswerChoice = {
      kind: 'pass',
      step: 'first-right',
      tiles: ['red', 'green', 'west'],
      blind: 0,
    };
    const own: OwnTable = {
      ...EMPTY_TABLE,
      table: { ...EMPTY_TABLE.table, dealer: 1 },
      tiles: WINDS_RACK,
      begun: true,
      entries: [
        { kind: 'choice', choice: pass },
        { kind: 'arrival', tiles: ['dot-1', 'dot-2', 'dot-3'], blind: [0, 0, 0, 0] },
      ],
    };
    const result = layAll(own.table, own.tiles, own.entries);
    if (!result.ok) throw new Error(result.message);
    const drill = lessonOfTable(own, result.exchange, seedNamed('table'));
    const read = readLesson(drillFileText({ drill }));
    const moments = read.ok ? read.lesson.deals[0]!.moments : [];
    expect(moments.map(({ teacher }) => teacher && isSameChoice(teacher, pass))).toEqual([true]);
  });
});

describe('a lesson that is played along', () => {
  const first = { deal: 0, moment: 0 };

  it('T4 judges one’s own choice and the teacher’s for the same tiles, and both stand', async () => {
    const { view, teacher } = momentAt(windsLesson(), first)!;
    const own: AnswerChoice = {
      kind: 'pass',
      step: 'first-right',
      tiles: ['bam-1', 'bam-2', 'bam-3'],
      blind: 0,
    };
    const judge = createJudge(windsLesson().card, ({ record, choices }, { onChoice }) => {
      const last = record.steps.at(-1);
      const isTeachers = last?.kind === 'move' && last.gave.includes('red');
      queueMicrotask(() => {
        const analysis = sampleDeepAnalysis(isTeachers ? 'costly' : 'best');
        for (const nth of choices) onChoice({ nth, analysis });
      });
      return () => {};
    });
    judge.ask(view.record, own);
    judge.ask(view.record, teacher!);
    await Promise.resolve();
    const [mine, theirs] = [judge.of(view.record, own), judge.of(view.record, teacher!)];
    expect([mine?.is, theirs?.is]).toEqual(['done', 'done']);
    expect([isFaulted(mine), isFaulted(theirs), isFaulted(null)]).toEqual([false, true, false]);
  });

  it('T2 ends its deal behind the last moment, and the lesson behind the last deal', () => {
    const lesson = windsLesson();
    expect(momentAt(lesson, { deal: 0, moment: 3 })).toMatchObject({ step: 'vote' });
    expect(momentAt(lesson, { deal: 0, moment: 4 })).toBeNull();
    expect(dealAfter(lesson, first)).toBeNull();
    expect(dealAfter({ ...lesson, deals: [...lesson.deals, ...lesson.deals] }, first)).toEqual({
      deal: 1,
      moment: 0,
    });
  });

  it('T4 at the end says at how many steps the teacher’s choice was made too', () => {
    const lesson = windsLesson();
    const { moments } = lesson.deals[0]!;
    const chosen = new Map<string, AnswerChoice>([
      [placeKey(first), moments[0]!.teacher!],
      [placeKey({ deal: 0, moment: 1 }), moments[0]!.teacher!],
      [placeKey({ deal: 0, moment: 3 }), { kind: 'vote', step: 'vote', go: true }],
    ]);
    expect(agreement(lesson, chosen)).toEqual({ same: 1, of: 2 });
  });

  it('T4 a choice is the same in whatever order its tiles were tapped', () => {
    const pass = (tiles: readonly Face[], blind = 0): AnswerChoice => ({
      kind: 'pass',
      step: 'first-left',
      tiles,
      blind,
    });
    expect(isSameChoice(pass(['red', 'bam-1', 'east']), pass(['bam-1', 'east', 'red']))).toBe(true);
    expect(isSameChoice(pass(['red', 'bam-1']), pass(['bam-1', 'red'], 1))).toBe(false);
    const vote = (go: boolean): AnswerChoice => ({ kind: 'vote', step: 'vote', go });
    expect([isSameChoice(vote(true), vote(true)), isSameChoice(vote(true), vote(false))]).toEqual([
      true,
      false,
    ]);
  });
});
