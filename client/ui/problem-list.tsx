// What is wrong with something that was sent or chosen, said at once; nothing where nothing is wrong.

/** A longer list helps nobody. */
const MOST = 12;

export function ProblemList({ problems }: { readonly problems: readonly string[] }) {
  return (
    <div class="notice" role="alert">
      {problems.length > 0 && (
        <ul>
          {problems.slice(0, MOST).map((problem) => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
    </div>
  );
}
