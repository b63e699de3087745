// A sheet over the screen: the browser's own dialog, closed by its button, by Escape or by a tap beside it.
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { SHEET } from './strings.ts';

interface SheetProps {
  readonly title: string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

export function Sheet({ title, onClose, children }: SheetProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const box = dialog.current;
    if (!box) return;
    box.showModal();
    // The content covers the box; a tap on the box itself is a tap beside the sheet. Escape does the same.
    const beside = (event: MouseEvent) => event.target === box && box.close();
    box.addEventListener('click', beside);
    return () => box.removeEventListener('click', beside);
  }, []);
  return (
    <dialog ref={dialog} class="sheet" aria-labelledby="sheet-title" onClose={onClose}>
      <div class="sheet-body">
        <header class="sheet-head">
          <h2 id="sheet-title">{title}</h2>
          <button type="button" onClick={() => dialog.current?.close()}>
            {SHEET.close}
          </button>
        </header>
        {children}
      </div>
    </dialog>
  );
}
