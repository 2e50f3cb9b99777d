/** Ctrl+C, a request to end and a terminal that is closed: what is being written is finished or taken back, and the program ends. */

import { stopWriting } from '../export/node-write-whole.ts';
import { exitCodes } from './usage.ts';

export function stopOnSignals(): void {
  let isStopping = false;
  const stop = async (): Promise<void> => {
    if (isStopping) return;
    isStopping = true;
    await stopWriting();
    console.error('Stopped. No file is half written.');
    process.exit(exitCodes.stopped);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => void stop());
}
