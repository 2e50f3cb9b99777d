/** Keyboard shortcuts of the page. */

/** Whether the event is this letter or digit without modifiers; Shift is left to the caller. */
export function isPlain(event: KeyboardEvent, key: string): boolean {
  return event.key.toLowerCase() === key && !event.ctrlKey && !event.metaKey && !event.altKey;
}

/** The editor's own shortcuts for undo and redo. */
export function undoStep(event: KeyboardEvent): 'undo' | 'redo' | undefined {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return undefined;
  const key = event.key.toLowerCase();
  if (key === 'z') return event.shiftKey ? 'redo' : 'undo';
  return key === 'y' ? 'redo' : undefined;
}
