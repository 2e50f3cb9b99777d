import { setAttribute } from '../../common/dom.ts';

/** What a click on the element, or light from the editor, is about. */
export function setTarget(element: Element, target: { readonly id: string; readonly source: number }): void {
  setAttribute(element, 'data-id', target.id);
  setAttribute(element, 'data-offset', `${target.source}`);
}
