// How the page of all parts is laid out: a named place for each part, which pictures are taken of, and each state named.
import type { ComponentChildren } from 'preact';

interface PartProps {
  /** Of the picture; also the part's place in the page. */
  readonly name: string;
  readonly children: ComponentChildren;
}

/** Parts named in the address, separated by commas; without any, all are shown. */
const wanted = new Set(window.location.hash.replace(/^#/, '').split(',').filter(Boolean));

export function Part({ name, children }: PartProps) {
  if (wanted.size > 0 && !wanted.has(name)) return null;
  return (
    <section id={name} class="part-of-page">
      <h2>{name}</h2>
      {children}
    </section>
  );
}

export function State({ name, children }: PartProps) {
  return (
    <div class="state-of-part">
      <p class="state-name">{name}</p>
      {children}
    </div>
  );
}
