// One field for a code or a pasted link.
import { useSignal } from '@preact/signals';
import { tidyCode } from '../app/routes/route.ts';
import { CODE_FIELD } from '../ui/strings.ts';

interface CodeFieldProps {
  /** Opens what has this code. */
  readonly onCode: (code: string) => void;
  /** Why the code that was sent last was not opened. */
  readonly problem?: string | null;
}

export function CodeField({ onCode, problem = null }: CodeFieldProps) {
  const text = useSignal('');
  const empty = useSignal(false);

  function submit(event: Event) {
    event.preventDefault();
    const code = tidyCode(text.value);
    empty.value = code === '';
    if (code !== '') onCode(code);
  }

  return (
    <form class="field code-field" onSubmit={submit} noValidate>
      <label for="code">{CODE_FIELD.label}</label>
      <div class="row">
        <input
          id="code"
          class="code-input"
          autocomplete="off"
          autocapitalize="characters"
          spellcheck={false}
          value={text.value}
          aria-describedby="code-missing"
          onInput={(event) => {
            text.value = event.currentTarget.value;
          }}
        />
        <button type="submit">{CODE_FIELD.button}</button>
      </div>
      <p id="code-missing" class="notice" role="alert">
        {empty.value ? CODE_FIELD.missing : problem}
      </p>
    </form>
  );
}
