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
  const asks = useSignal(false);
  return (
    <>
      <button
        type="button"
        onClick={() => {
          asks.value = !asks.value;
        }}
      >
        {asks.value ? no : name}
      </button>
      {asks.value && (
        <button type="button" class="primary" onClick={onYes}>
          {yes}
        </button>
      )}
      {asks.value && about !== undefined && <p class="about">{about}</p>}
    </>
  );
}
