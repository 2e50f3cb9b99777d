/** What gives way in the row of tools, one thing after another, until none of the rest is cut off. */

const inTurn = ['pills', 'words', 'layers-word', 'export-word', 'steps', 'tools', 'arrangement'].map(
  (what) => `without-${what}`,
);

/** How wide words are depends on fonts, pieces and what was exported last, so the row is asked and not its width alone. */
export function giveWay(row: HTMLElement): void {
  const settle = (): void => {
    row.classList.remove(...inTurn);
    for (const what of inTurn) {
      if (row.scrollWidth <= row.clientWidth) return;
      row.classList.add(what);
    }
  };
  // In the next frame, for it changes the sizes that are observed.
  const observer = new ResizeObserver(() => requestAnimationFrame(settle));
  for (const each of [row, ...row.children]) observer.observe(each);
  settle();
}
