/**
 * The properties of an element that affect what is drawn: its own `style`, then the drawing's style sheets by element,
 * class and id, then its attributes. Other selectors are ignored.
 */

import type { Attributes } from './svg-shapes.ts';

type Declarations = Readonly<Record<string, string>>;

/** By selector: `path`, `.vein` or `#leaf`. Of equal selectors the later one wins. */
export type StyleSheet = ReadonlyMap<string, Declarations>;

/** Simple selectors of all rules. Split by hand: without braces, a regular expression would try every beginning. */
export function parseStyleSheet(css: string): StyleSheet {
  const rules = new Map<string, Declarations>();
  for (const rule of withoutComments(css).split('}')) {
    const brace = rule.lastIndexOf('{');
    if (brace < 0) continue;
    const declarations = declarationsIn(rule.slice(brace + 1));
    const selectors = rule.slice(0, brace).split(',');
    for (const selector of selectors.map((each) => each.trim())) {
      if (/^[.#]?[\w-]+$/.test(selector)) rules.set(selector, { ...rules.get(selector), ...declarations });
    }
  }
  return rules;
}

function withoutComments(css: string): string {
  const [first = '', ...rest] = css.split('/*');
  return first + rest.map((part) => (part.includes('*/') ? part.slice(part.indexOf('*/') + 2) : '')).join('');
}

function declarationsIn(style: string): Declarations {
  const found: Record<string, string> = {};
  for (const declaration of style.split(';')) {
    const colon = declaration.indexOf(':');
    if (colon < 0) continue;
    const value = declaration.slice(colon + 1).replace('!important', '');
    found[declaration.slice(0, colon).trim()] = value.trim();
  }
  return found;
}

/** Looks up a property of an element; `undefined` if it is not set there. */
export function propertiesOf(
  tag: string,
  attributes: Attributes,
  sheet: StyleSheet,
): (name: string) => string | undefined {
  const own = attributes['style'] === undefined ? {} : declarationsIn(attributes['style']);
  const classes = attributes['class']?.trim().split(/\s+/) ?? [];
  const selectors = [`#${attributes['id'] ?? ''}`, ...classes.map((name) => `.${name}`).reverse(), tag];
  return (name) =>
    own[name] ??
    selectors.map((selector) => sheet.get(selector)?.[name]).find((value) => value !== undefined) ??
    attributes[name];
}
