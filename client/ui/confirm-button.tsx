// A button for what cannot be undone: it asks once more, and a second tap on the same spot takes it back.
import { useSignal } from '@preact/signals';

interface ConfirmButtonProps {
  readonly name: string;
  readonly yes: string;
  readonly no: string;
  /** What it comes to, said when it asks. */
  readonly about?: string;
  readonly onYes: () => void;
}

export function ConfirmButton({ name, yes, no, about, onYes }: ConfirmButtonProps) {
  /** The width of the button in pixels while it asks: a narrower one could move up and leave its place to the other. */
  const asked = useSignal<number | null>(null);
  const asks = asked.value !== null;
  return (
    <>
      <button
        type="button"
        style={asks ? { minInlineSize: `${asked.value}px` } : undefined}
        onClick={({ currentTarget }) => {
          asked.value = asks ? null : currentTarget.offsetWidth;
        }}
      >
        {asks ? no : name}
      </button>
      {asks && (
        <button type="button" class="primary" onClick={onYes}>
          {yes}
        </button>
      )}
      {asks && about !== undefined && <p class="about">{about}</p>}
    </>
  );
}
