// Ends the process in words where Node is too old; to be imported before anything that needs a newer one.
import { nodeProblem } from './start-problems.ts';

const problem = nodeProblem(process.versions.node);
if (problem !== null) {
  console.error(problem);
  process.exit(1);
}
