// The one thing asked of a player: what to call them.
import { useSignal } from '@preact/signals';
import { useEffect, useRef } from 'preact/hooks';
import { FIELD, NAME_FIELD } from './strings.ts';

interface NameFieldProps {
  readonly value: string;
  /** True once a name was needed and none that can be read was there. */
  readonly missing: boolean;
  readonly onChange: (name: string) => void;
}

export function NameField({ value, missing, onChange }: NameFieldProps) {
  const field = useRef<HTMLInputElement>(null);
  const isCut = useSignal(false);
  useEffect(() => {
    if (missing) field.current?.focus();
  }, [missing]);
  return (
    <div class="field">
      <label for="name">{NAME_FIELD.label}</label>
      <input
        ref={field}
        id="name"
        autocomplete="nickname"
        value={value}
        aria-invalid={missing}
        aria-describedby="name-missing"
        onInput={(event) => {
          const field = event.currentTarget;
          const name = firstCharacters(field.value, LONGEST_NAME);
          isCut.value = name !== field.value;
          if (isCut.value) field.value = name;
          onChange(name);
        }}
      />
      <p class="aside full-note" role="status">
        {isCut.value ? FIELD.full(LONGEST_NAME) : null}
      </p>
      <p id="name-missing" class="notice" role="alert">
        {missing ? (value.trim() === '' ? NAME_FIELD.missing : NAME_FIELD.notVisible) : null}
      </p>
    </div>
  );
}

/** As many as a table takes. */
const LONGEST_NAME = 24;

/** The first characters as people count them: an accent or a joined sign is no character of its own. */
function firstCharacters(text: string, count: number): string {
  const parts = new Intl.Segmenter(undefined, { granularity: 'grapheme' }).segment(text);
  return [...parts]
    .slice(0, count)
    .map(({ segment }) => segment)
    .join('');
}
