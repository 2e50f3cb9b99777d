/** Keys of the page that are letters. */

/** Whether the event is this letter or digit by itself; Shift is left to who asks. */
export function isPlain(event: KeyboardEvent, key: string): boolean {
  return event.key.toLowerCase() === key && !event.ctrlKey && !event.metaKey && !event.altKey;
}
