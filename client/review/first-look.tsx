// The first answer, folded away once the deep analysis is there.
import type { ComponentChildren } from 'preact';
import { DEEP } from './deep-strings.ts';

export function FirstLook({ children }: { readonly children: ComponentChildren }) {
  return (
    <details class="panel first-look">
      <summary>{DEEP.firstLook}</summary>
      <p class="aside">{DEEP.firstLookAbout}</p>
      {children}
    </details>
  );
}
