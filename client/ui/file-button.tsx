// A button that asks for a JSON file.

interface FileButtonProps {
  readonly words: string;
  readonly onFile: (file: File) => void;
}

export function FileButton({ words, onFile }: FileButtonProps) {
  return (
    <label class="button file-button">
      {words}
      <input
        type="file"
        class="spoken"
        accept="application/json,.json"
        onChange={({ currentTarget }) => {
          const file = currentTarget.files?.[0];
          // The same file can be chosen again.
          currentTarget.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}
