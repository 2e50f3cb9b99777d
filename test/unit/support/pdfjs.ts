/**
 * pdfjs-dist, which on older engines brings its own of what is built in. Some of that takes many times as long, for all that
 * runs afterwards in the process; so the engine's is put back.
 */

const replaced = [
  [Array.prototype, 'push'],
  [JSON, 'parse'],
  [JSON, 'stringify'],
] as const;
const builtIn = replaced.map(([of, name]) => ({ of, name, own: Object.getOwnPropertyDescriptor(of, name)! }));
// It would be loaded with the first file that is read, and bring them once more.
await import('pdfjs-dist/legacy/build/pdf.worker.mjs');
export const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs');
for (const { of, name, own } of builtIn) Object.defineProperty(of, name, own);
