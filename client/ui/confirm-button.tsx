// A button for what cannot be undone: it asks once more, and a second tap on the same spot takes it back.
import { useSignal } from '@preact/signals';

interface ConfirmButtonProps {
  readonly name: string;
  readonly yes: string;
  readonly no: string;
  /** What it comes to, said when it asks. */
  readonly about?: string;
  /** Where it takes a while, what ends with it: until then no further tap counts. */
  readonly onYes: () => unknown;
}

export function ConfirmButton({ name, yes, no, about, onYes }: ConfirmButtonProps) {
  /** The width of the button in pixels while it asks: a narrower one could move up and leave its place to the other. */
  const asked = useSignal<number | null>(null);
  const asks = asked.value !== null;
  const runs = useSignal(false);

  async function run() {
    if (runs.value) return;
    runs.value = true;
    try {
      await onYes();
    } finally {
      runs.value = false;
    }
  }

  return (
    <>
      <button
        type="button"
        style={asks ? { minInlineSize: `${asked.value}px` } : undefined}
        aria-disabled={runs.value}
        onClick={({ currentTarget }) => {
          if (!runs.value) asked.value = asks ? null : currentTarget.offsetWidth;
        }}
      >
        {asks ? no : name}
      </button>
      {asks && (
        <button type="button" class="primary" aria-disabled={runs.value} onClick={() => void run()}>
          {yes}
        </button>
      )}
      {asks && about !== undefined && <p class="about">{about}</p>}
    </>
  );
}
