// Says below a text field that it is full: what is typed or pasted beyond that is left out.
import { FIELD } from './strings.ts';

interface FullNoteProps {
  readonly text: string;
  /** How many characters the field takes. */
  readonly most: number;
}

export function FullNote({ text, most }: FullNoteProps) {
  return (
    <p class="aside full-note" role="status">
      {text.length >= most ? FIELD.full(most) : null}
    </p>
  );
}
