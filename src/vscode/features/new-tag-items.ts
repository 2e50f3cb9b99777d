/** What “New Tag…” offers to choose from, question by question. */

import * as vscode from 'vscode';
import type { Fix } from '../../core/issue.ts';
import type { FontNote } from '../../language/workspace-names.ts';
import { parseLength } from '../../core/length.ts';
import { kindNames } from '../../language/new-tag.ts';
import { isFontFile } from '../../text/font-files.ts';
import type { Sample } from '../samples/sample-library.ts';
import type { SharedEntry } from './workshop-files.ts';

export interface Answers {
  readonly sample: Sample;
  readonly texts: readonly string[];
  readonly font?: string | undefined;
  /** Absent: as in the sample. */
  readonly width?: string | undefined;
  /** Stock of a workshop file; absent: as in the sample. */
  readonly stock?: { readonly file: string; readonly name: string } | undefined;
  /** Fix for parts that would drop out. */
  readonly fix?: Fix | undefined;
}

const widths = ['60 mm', '80 mm', '100 mm', '120 mm'];
/** Smaller tags get lost on the honeycomb, and larger ones are not hang tags; our own judgement. */
const widthRange = { least: 5, most: 1000 };

export interface AnswerItem extends vscode.QuickPickItem {
  readonly value: Partial<Answers> | undefined;
}

/**
 * Another kind has other texts, so those are reset. What each is for stands beside it: below it, the list would cover twice
 * as much of the drawing.
 */
export function kinds(samples: readonly Sample[]): AnswerItem[] {
  return samples.map((sample) => ({
    label: kindNames[sample.fileName]!,
    description: sample.purpose,
    value: { sample, texts: [] },
  }));
}

/** `files`: paths from the spec. */
export function fontItems(
  current: string | undefined,
  fonts: readonly FontNote[],
  files: readonly string[],
): AnswerItem[] {
  const items = [
    ...files.filter(isFontFile).map((font) => ({ label: font, description: 'file beside the spec', value: { font } })),
    ...fonts.map(({ family, note }) => ({
      label: family,
      ...(note === undefined ? {} : { description: note }),
      value: { font: family },
    })),
  ];
  // The present font comes first, so that Enter keeps it.
  return items.sort((a, b) => Number(b.label === current) - Number(a.label === current));
}

export type StockNote = Pick<SharedEntry, 'name' | 'short'> & { readonly file: string };

export function stockItems(stocks: readonly StockNote[]): AnswerItem[] {
  const own = { label: 'As the sample has it', description: 'written into the spec', value: { stock: undefined } };
  return [
    ...stocks.map(({ name, short, file }) => ({
      label: name,
      description: short,
      detail: file,
      value: { stock: { file, name } },
    })),
    own,
  ];
}

/** The change is the label; its effect is the line below. */
export function fixItem(fix: Fix): AnswerItem {
  const [, label = fix.title, detail] = /^(.*?)(?: \((.*)\))?$/.exec(fix.title) ?? [];
  return { label, ...(detail === undefined ? {} : { detail }), value: { fix } };
}

/** The typed text if it is a width; else the reason why not, which cannot be chosen. */
export function widthItems(typed: string): AnswerItem[] {
  const wanted = typed.trim();
  if (wanted === '') {
    return [
      { label: 'As it is', description: 'sized like the sample', value: { width: undefined } },
      ...widths.map((width) => ({ label: width, value: { width } })),
    ];
  }
  const length = parseLength(wanted, 'mm');
  if ('problem' in length) return [{ label: length.problem, value: undefined }];
  const { least, most } = widthRange;
  if (length.mm < least || length.mm > most) {
    return [{ label: `A tag cannot be ${wanted} wide: choose a width from ${least} to ${most} mm.`, value: undefined }];
  }
  const width = /[a-z]$/.test(wanted) ? wanted : `${wanted} mm`;
  return [{ label: width, value: { width } }];
}
