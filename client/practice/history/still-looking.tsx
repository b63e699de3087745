// That rounds are still being looked at, and how many.
import { ROUNDS } from './strings.ts';

export function StillLooking({ left }: { readonly left: number }) {
  return (
    <p class="aside" role="status">
      {left > 0 && ROUNDS.looking(left)}
    </p>
  );
}
