/** Options with which the engine computes a spec in the editor. */

import type * as vscode from 'vscode';
import type { ComputeOptions } from '../../engine/engine.ts';
import { locateBeside } from './font-files.ts';
import { severitiesFor } from './severities.ts';

/** `row`: of a batch. */
export function computeOptions(spec: vscode.Uri, signal: AbortSignal, row = 0): ComputeOptions {
  return { row, locate: locateBeside(spec), severities: severitiesFor(spec), signal };
}

/** Lets the editor handle events in the middle of long work, such as a click on Cancel. */
export function editorTurn(signal?: AbortSignal): () => Promise<void> {
  return async () => {
    await new Promise((resolve) => setTimeout(resolve, 0));
    signal?.throwIfAborted();
  };
}

/** Runs abortable work until it is cancelled; `undefined` in that case. */
export async function whileWanted<T>(
  token: vscode.CancellationToken,
  run: (signal: AbortSignal) => Promise<T>,
): Promise<T | undefined> {
  const controller = new AbortController();
  const cancelling = token.onCancellationRequested(() => {
    controller.abort();
  });
  try {
    return await run(controller.signal);
  } catch (error) {
    if (controller.signal.aborted) return undefined;
    throw error;
  } finally {
    cancelling.dispose();
  }
}
