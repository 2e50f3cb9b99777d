/**
 * Loaded into the editor's server before its own code: ends the server's whole process group when the process that started
 * it is gone, however that ended. The parent's end of our standard input closes with it.
 */

import process from 'node:process';

// Processes that the server forks inherit this loader, but not the input it watches.
if (process.argv[1]?.endsWith('server-main.js')) {
  process.stdin.on('close', () => {
    process.kill(process.platform === 'win32' ? process.pid : -process.pid, 'SIGKILL');
  });
  process.stdin.resume();
}
