/** DOM helpers. Text from specs reaches the page through `textContent` and attributes only, never as markup. */

export function svg<K extends keyof SVGElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>> = {},
  ...children: readonly Element[]
): SVGElementTagNameMap[K] {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

export function html<K extends keyof HTMLElementTagNameMap>(
  name: K,
  attributes: Readonly<Record<string, string>> = {},
  ...children: readonly (Element | string)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...children);
  return element;
}

/** `title`: tooltip, for a button whose text does not say enough. */
export function button(text: string, title: string, pressed: () => void): HTMLButtonElement {
  const element = html('button', { type: 'button', ...(title === '' ? {} : { title }) }, text);
  element.addEventListener('click', pressed);
  return element;
}

/** An element of the static shell; throws if it does not exist. */
export function byId(id: string): HTMLElement {
  const element = document.getElementById(id);
  if (!element) throw new Error(`The page has no #${id}.`);
  return element;
}

/** Leaves an attribute with the right value untouched, so that nothing is laid out or painted for it. */
export function setAttribute(element: Element, name: string, value: string): void {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

export function setText(element: Element, text: string): void {
  if (element.textContent !== text) element.textContent = text;
}

export function allowsMotion(): boolean {
  return (
    !document.body.classList.contains('vscode-reduce-motion') &&
    !window.matchMedia('(prefers-reduced-motion: reduce)').matches
  );
}

/** Calls `then` once the present drawing has been painted: the second frame from here begins after the first. */
export function afterPaint(then: () => void): void {
  requestAnimationFrame(() => {
    requestAnimationFrame(then);
  });
}
