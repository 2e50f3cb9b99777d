import { realpathSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** Whether this process was started to run the module; another may import it. */
export function isOwnProcess(moduleUrl: string): boolean {
  const [, program] = process.argv;
  return program !== undefined && realpathSync(program) === fileURLToPath(moduleUrl);
}
