// The product's mark: a Q made of a tile and a smaller one on its way out.

export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 64 64" aria-hidden="true" focusable="false">
      <rect class="mark-tile" x="11" y="6" width="36" height="47" rx="9" />
      <rect class="mark-gap" x="34" y="34" width="24" height="28" rx="6" transform="rotate(-24 46 48)" />
      <rect class="mark-own" x="37" y="37" width="18" height="22" rx="4" transform="rotate(-24 46 48)" />
    </svg>
  );
}
