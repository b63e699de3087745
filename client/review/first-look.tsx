// The first answer, folded away once a deeper one has taken its place.
import type { ComponentChildren } from 'preact';
import { JUDGEMENT } from './deep-strings.ts';

export function FirstLook({ children }: { readonly children: ComponentChildren }) {
  return (
    <details class="panel first-look">
      <summary>{JUDGEMENT.firstLook}</summary>
      <p class="aside">{JUDGEMENT.firstLookAbout}</p>
      {children}
    </details>
  );
}
