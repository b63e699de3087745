// After the last rack: what the answers come to, and the racks that are worth another look.

import { VERDICTS } from '../../room/verdicts.ts';
import { TileRow } from '../../tiles/tile-row.tsx';
import type { AnsweredRack, RacksModel, RacksState } from './model.ts';
import { RackAnswerView } from './rack-answer.tsx';
import { RACKS } from './strings.ts';
import { costSentences, doneTitle, rackSummary, SECTIONS_MET } from './sum-strings.ts';
import { metCounts, passSum, sortedOut } from './summary.ts';

interface DoneProps {
  readonly model: RacksModel;
  readonly state: RacksState & { readonly is: 'done' };
}

export function Done({ model, state: { question, answered } }: DoneProps) {
  const { again, rest } = sortedOut(answered);
  return (
    <>
      <h2>{doneTitle(answered.length)}</h2>
      {question === 'pass' ? <PassSumView answered={answered} /> : <SectionsSumView answered={answered} />}
      {again.length === 0 ? (
        <p>{RACKS.nothing}</p>
      ) : (
        <section class="round-group">
          <h3>{RACKS.another}</h3>
          <Racks racks={again} />
          <button type="button" onClick={() => model.repeat(again.map(({ asked }) => asked))}>
            {RACKS.askAgain}
          </button>
        </section>
      )}
      {rest.length > 0 && (
        <section class="round-group">
          <h3>{again.length > 0 ? RACKS.rest : RACKS.all}</h3>
          <Racks racks={rest} />
        </section>
      )}
      <button type="button" class="primary" onClick={() => model.choose()}>
        {RACKS.again}
      </button>
    </>
  );
}

interface AnsweredProps {
  readonly answered: readonly AnsweredRack[];
}

function PassSumView({ answered }: AnsweredProps) {
  const sum = passSum(answered);
  return (
    <>
      <Counts rows={sum.counts.map(({ verdict, count }) => ({ name: VERDICTS[verdict].name, count }))} />
      {costSentences(sum).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <p class="aside">{RACKS.firstLook}</p>
    </>
  );
}

function SectionsSumView({ answered }: AnsweredProps) {
  return <Counts rows={metCounts(answered).map(({ met, count }) => ({ name: SECTIONS_MET[met], count }))} />;
}

function Counts({ rows }: { readonly rows: readonly { readonly name: string; readonly count: number }[] }) {
  return (
    <table class="distances">
      <caption>{RACKS.sum}</caption>
      <tbody>
        {rows.map(({ name, count }) => (
          <tr key={name}>
            <th scope="row">{name}</th>
            <td>{count}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** A rack a line, with what was said of it folded under it. */
function Racks({ racks }: { readonly racks: readonly AnsweredRack[] }) {
  return (
    <>
      {racks.map((rack) => (
        <details key={rack.nth} class="panel answered-rack">
          <summary>{rackSummary(rack)}</summary>
          <TileRow tiles={rack.asked.rack} />
          <RackAnswerView answer={rack.answer} />
        </details>
      ))}
    </>
  );
}
