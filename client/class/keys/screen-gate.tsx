// What a computer at the wall asks for before it shows the big screen: the code from the dashboard.
import { useSignal } from '@preact/signals';
import { bringScreenCode } from '../model/requests.ts';
import { SCREEN } from './strings.ts';

interface ScreenGateProps {
  readonly code: string;
  readonly onOpened: () => void;
}

export function ScreenGate({ code, onOpened }: ScreenGateProps) {
  const text = useSignal('');
  const problem = useSignal<string | null>(null);
  async function submit(event: Event) {
    event.preventDefault();
    const answer = await bringScreenCode(code, text.value);
    problem.value = answer.ok ? null : answer.message;
    if (answer.ok) onOpened();
  }
  return (
    <main class="quiet">
      <h1>{SCREEN.heading}</h1>
      <form class="field code-field" onSubmit={(event) => void submit(event)} noValidate>
        <label for="screen-code">{SCREEN.ask}</label>
        <p id="screen-code-about">{SCREEN.askAbout}</p>
        <div class="row">
          <input
            id="screen-code"
            class="code-input"
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            value={text.value}
            aria-describedby="screen-code-about"
            onInput={(event) => {
              text.value = event.currentTarget.value;
            }}
          />
          <button type="submit">{SCREEN.go}</button>
        </div>
        <p class="notice" role="alert">
          {problem.value}
        </p>
      </form>
    </main>
  );
}
