/** Less compiling by V8, for programs that end after some seconds. */

import { setFlagsFromString } from 'node:v8';

/**
 * Has V8 translate every function once, simply, and optimise only those that run far longer than it usually waits for: of the processor
 * time for 500 names 30 % was its compiler's, as each thread compiles for itself what it will run for some seconds.
 */
export function compileLess(): void {
  setFlagsFromString('--always-sparkplug');
  // Bytes of code run; usually 132 KB.
  setFlagsFromString('--interrupt-budget=528000');
}
