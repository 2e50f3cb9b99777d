/** Keys of the page that are letters. */

/** Whether the event is this letter or digit by itself; Shift is left to who asks. */
export function isPlain(event: KeyboardEvent, key: string): boolean {
  return event.key.toLowerCase() === key && !event.ctrlKey && !event.metaKey && !event.altKey;
}

/** The editor's own keys for it. */
export function undoStep(event: KeyboardEvent): 'undo' | 'redo' | undefined {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return undefined;
  const key = event.key.toLowerCase();
  if (key === 'z') return event.shiftKey ? 'redo' : 'undo';
  return key === 'y' ? 'redo' : undefined;
}
