/** Parsed texts of open specs. */

import type * as vscode from 'vscode';
import { SpecSource } from '../../spec/yaml/source.ts';

const read = new WeakMap<vscode.TextDocument, SpecSource>();

/** The parsed text of a document, shared by all features that ask after the same keystroke. */
export function sourceOf(document: vscode.TextDocument): SpecSource {
  const text = document.getText();
  const known = read.get(document);
  if (known?.text === text) return known;
  const source = new SpecSource(text);
  read.set(document, source);
  return source;
}
