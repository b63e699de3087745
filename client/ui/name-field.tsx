// The one thing asked of a player: what to call them.
import { useEffect, useRef } from 'preact/hooks';
import { NAME_FIELD } from './strings.ts';

interface NameFieldProps {
  readonly value: string;
  /** True once a name was needed and none was there. */
  readonly missing: boolean;
  readonly onChange: (name: string) => void;
}

export function NameField({ value, missing, onChange }: NameFieldProps) {
  const field = useRef<HTMLInputElement>(null);
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
        maxLength={40}
        value={value}
        aria-invalid={missing}
        aria-describedby="name-missing"
        onInput={(event) => onChange(event.currentTarget.value)}
      />
      <p id="name-missing" class="notice" role="alert">
        {missing ? NAME_FIELD.missing : null}
      </p>
    </div>
  );
}
