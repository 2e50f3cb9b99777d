import { setAttribute } from '../../common/dom.ts';

/** Marks an element with the id and text offset that clicks and highlights refer to. */
export function setTarget(element: Element, target: { readonly id: string; readonly source: number }): void {
  setAttribute(element, 'data-id', target.id);
  setAttribute(element, 'data-offset', `${target.source}`);
}
