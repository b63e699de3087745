// The product's mark: four racks around a table, one of them yours.

export function Mark() {
  return (
    <svg class="mark" viewBox="0 0 64 64" aria-hidden="true" focusable="false">
      <rect class="mark-rack" x="24.500" y="4" width="15" height="20" rx="3" />
      <rect class="mark-rack" x="4" y="22" width="15" height="20" rx="3" />
      <rect class="mark-rack" x="45" y="22" width="15" height="20" rx="3" />
      <rect class="mark-own" x="24.500" y="40" width="15" height="20" rx="3" />
    </svg>
  );
}
