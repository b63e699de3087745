// Opens a class at this computer with the file of a teacher's key.
import { useSignal } from '@preact/signals';
import { FileButton } from '../../ui/file-button.tsx';
import { KEYS } from './strings.ts';
import { pathInKeyFile } from './teacher-key.ts';

export function KeyFileButton() {
  const isOther = useSignal(false);
  async function open(file: File) {
    const path = pathInKeyFile(await file.text());
    isOther.value = path === null;
    // The page of the class reads the key and takes it out of the address.
    if (path !== null) window.location.assign(path);
  }
  return (
    <>
      <FileButton words={KEYS.open} onFile={(file) => void open(file)} />
      <p class="notice" role="alert">
        {isOther.value ? KEYS.noKey : null}
      </p>
    </>
  );
}
