// Buttons, fields and sentences that every screen shares, in each of their states.
import { CodeField } from '../../room/code-field.tsx';
import { Bar } from '../../ui/bar.tsx';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { FileButton } from '../../ui/file-button.tsx';
import { NameField } from '../../ui/name-field.tsx';
import { ProblemList } from '../../ui/problem-list.tsx';
import { Part, State } from './frame.tsx';

const LONG =
  'Something went wrong with the card file that you have chosen, and this sentence says at length what it was.';

export function ControlsPart() {
  return (
    <Part name="controls">
      <State name="the bar">
        <Bar app={{ go() {}, show() {} }} home>
          <p class="room-code">Q7MK3XWD</p>
        </Bar>
      </State>
      <State name="buttons: plain, the one to press, not now, pressed, a link">
        <div class="row">
          <button type="button">Take it back</button>
          <button type="button" class="primary">
            Pass right
          </button>
          <button type="button" aria-disabled="true">
            Pass right
          </button>
          <button type="button" class="primary" aria-disabled="true">
            Pass right
          </button>
          <button type="button" aria-pressed="true">
            Stop reading
          </button>
          <a class="button" href="#controls">
            Class report
          </a>
          <FileButton words="Choose a file" onFile={() => {}} />
        </div>
      </State>
      <State name="a button that asks once more">
        <div class="row">
          <ConfirmButton
            name="Delete"
            yes="Delete it"
            no="Keep it"
            about="It cannot be had back."
            onYes={() => {}}
          />
        </div>
      </State>
      <State name="one of several, and yes or no">
        <div class="row">
          {['By suit', 'By number', 'By hand'].map((name, place) => (
            <label key={name} class="choice pill">
              <input type="radio" name="parts-sort" checked={place === 1} />
              <span>{name}</span>
            </label>
          ))}
          {[true, false].map((checked) => (
            <label key={String(checked)} class="choice">
              <input type="checkbox" checked={checked} />
              <span>{checked ? 'Sounds on' : 'Sounds off'}</span>
            </label>
          ))}
          <select aria-label="Bots">
            <option>Club player</option>
          </select>
        </div>
      </State>
      <State name="a name is missing">
        <NameField value="" missing onChange={() => {}} />
      </State>
      <State name="a code">
        <CodeField onCode={() => {}} />
      </State>
      <State name="notices: short, long, a list, none">
        <p class="notice" role="alert">
          Choose one more tile.
        </p>
        <p class="notice" role="alert">
          {LONG}
        </p>
        <ProblemList problems={['Hand 3 has 13 tiles and needs 14.', LONG]} />
        <p class="notice" role="alert" />
      </State>
      <State name="something folded, and unfolded">
        <details class="panel">
          <summary>The numbers</summary>
          <p>…</p>
        </details>
        <details class="panel" open>
          <summary>The numbers</summary>
          <p>Each dot is our best estimate.</p>
        </details>
      </State>
    </Part>
  );
}
