/** Roving focus: a group of buttons is one Tab stop; the arrow keys, Home and End move inside it. */

export function roving(container: HTMLElement): void {
  const items = (): HTMLElement[] =>
    [...container.querySelectorAll<HTMLElement>('button')].filter((item) =>
      item.checkVisibility({ visibilityProperty: true }),
    );

  const settle = (chosen?: HTMLElement): void => {
    const all = items();
    const stop = chosen ?? all.find((item) => item.tabIndex === 0) ?? all[0];
    for (const item of all) {
      const tabIndex = item === stop ? 0 : -1;
      if (item.tabIndex !== tabIndex) item.tabIndex = tabIndex;
    }
  };

  container.addEventListener('focusin', (event) => {
    const item = (event.target as Element).closest<HTMLElement>('button');
    if (item) settle(item);
  });
  container.addEventListener('keydown', (event) => {
    const all = items();
    const at = all.indexOf(event.target as HTMLElement);
    const to = targetIndex(event.key, at, all.length);
    if (at < 0 || to === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    all[to]!.focus();
  });
  // Buttons come and go; one of them must remain reachable.
  new MutationObserver(() => {
    settle();
  }).observe(container, { childList: true, subtree: true, attributes: true, attributeFilter: ['hidden', 'class'] });
  // Buttons are also shown and hidden as space allows.
  new ResizeObserver(() => {
    settle();
  }).observe(container);
  settle();
}

/** In a menu, the index to which an up or down arrow, Home or End leads; `undefined` for other keys. */
export function menuIndex(key: string, at: number, count: number): number | undefined {
  return key === 'ArrowLeft' || key === 'ArrowRight' ? undefined : targetIndex(key, at, count);
}

function targetIndex(key: string, at: number, count: number): number | undefined {
  switch (key) {
    case 'ArrowRight':
    case 'ArrowDown':
      return (at + 1) % count;
    case 'ArrowLeft':
    case 'ArrowUp':
      return (at - 1 + count) % count;
    case 'Home':
      return 0;
    case 'End':
      return count - 1;
    default:
      return undefined;
  }
}
