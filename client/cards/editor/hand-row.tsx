// A hand at a glance: each group as how many of which tile, the line as it is typed, what it comes to.
import { type Signal, useSignal } from '@preact/signals';
import type { RefObject } from 'preact';
import { useEffect, useMemo, useRef } from 'preact/hooks';
import { type CardFile, type CardPattern, exampleOf, writeShorthand } from '../../../shared-engine/index.ts';
import { Tile } from '../../tiles/tile.tsx';
import { reportOf, yearIn } from '../own/counting.ts';
import { HAND } from './strings.ts';

interface HandRowProps {
  readonly parameters: CardFile['parameters'];
  readonly pattern: CardPattern;
  readonly title: string;
  readonly onOpen: () => void;
}

export function HandRow({ parameters, pattern, title, onOpen }: HandRowProps) {
  const row = useRef<HTMLButtonElement>(null);
  const isNear = useNear(row).value;
  const report = reportOf(pattern, parameters);
  return useMemo(() => {
    const faces = isNear ? (exampleOf(pattern, parameters, pattern.id)?.faces ?? []) : [];
    const isWrong = report.problems.length > 0;
    return (
      <button ref={row} type="button" class={isWrong ? 'hand-row wrong' : 'hand-row'} onClick={onOpen}>
        <span class="spoken">{title}: </span>
        <span class="row-groups" aria-hidden="true">
          {faces.map((face, nth) => (
            <span key={`${nth}-${face}`} class="row-group">
              {pattern.groups[nth]?.size}
              <span class="small-tile">
                <Tile face={face} small />
              </span>
            </span>
          ))}
        </span>
        <span class="hand-text">{writeShorthand(pattern)}</span>
        <span class="about">
          {isWrong ? HAND.tiles(report.tiles) : report.isCounted ? HAND.ways(report.hands) : HAND.counting}
        </span>
      </button>
    );
  }, [pattern, yearIn(pattern, parameters), title, report, isNear]);
}

/** How far beyond the screen rows get their tiles, which are most of what a card of hundreds of hands would draw. */
const NEAR = '800px';

/** True once the element has come near the screen. */
function useNear(element: RefObject<Element | null>): Signal<boolean> {
  const isNear = useSignal(false);
  useEffect(() => {
    const seen = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        isNear.value = true;
        seen.disconnect();
      },
      { rootMargin: NEAR },
    );
    if (element.current) seen.observe(element.current);
    return () => seen.disconnect();
  }, [element, isNear]);
  return isNear;
}
