/** Work on several files: one that fails does not keep the others from it. */

import type { SpecFile } from './files.ts';
import { exitCodes, UsageError } from './usage.ts';

/** The worst exit code of all. */
export async function eachFile(
  specs: readonly SpecFile[],
  work: (spec: SpecFile) => Promise<number>,
  what: FileKind = 'spec',
): Promise<number> {
  let code: number = exitCodes.clean;
  for (const spec of specs) {
    try {
      code = Math.max(code, await work(spec));
    } catch (error) {
      // A disk that is full is so for the others too.
      if (error instanceof UsageError || isOfSystem(error)) throw error;
      console.error(`${spec.file}: ${ownFault(error, what)}`);
      code = Math.max(code, exitCodes.errors);
    }
  }
  return code;
}

const isOfSystem = (error: unknown): boolean => error instanceof Error && 'syscall' in error;

type FileKind = 'spec' | 'job';

/** What is said of a file that the program fails on, whatever it says. */
export function ownFault(error: unknown, what: FileKind = 'spec'): string {
  const cause = error instanceof Error ? error.message : String(error);
  const [made, files] = what === 'job' ? ['job', 'job and its files'] : ['tag', 'spec'];
  return `Tagwright failed on this ${made} (${cause}). The fault is in the program, not in the ${what}; please report it, with the ${files}.`;
}
