/** What “New Tag…” offers to choose from, question by question. */

import * as vscode from 'vscode';
import type { Fix } from '../../core/issue.ts';
import type { FontNote } from '../../language/workspace-names.ts';
import { partsOfTitle } from '../../fixes/offered.ts';
import { parseLength } from '../../core/length.ts';
import { mmPer, type Units } from '../../core/units.ts';
import { kindNames } from '../../language/new-tag.ts';
import { isFontFile } from '../../text/font-files.ts';
import type { Sample } from '../samples/sample-library.ts';
import type { SharedEntry } from './workshop-files.ts';

/** An entry of a workshop file. */
interface FromFile {
  readonly file: string;
  readonly name: string;
}

export interface Answers {
  readonly sample: Sample;
  readonly texts: readonly string[];
  /** Of the rows of a batch; absent: as in the sample. */
  readonly names?: readonly string[] | undefined;
  readonly font?: string | undefined;
  /** Absent: as in the sample. */
  readonly width?: string | undefined;
  /** Stock of a workshop file; absent: as in the sample. */
  readonly stock?: FromFile | undefined;
  /** Likewise. */
  readonly tie?: FromFile | undefined;
  /** Fix for parts that would drop out. */
  readonly fix?: Fix | undefined;
}

const widths: Readonly<Record<Units, readonly string[]>> = {
  mm: ['60 mm', '80 mm', '100 mm', '120 mm'],
  in: ['2 1/2 in', '3 in', '4 in', '5 in'],
};
/** Smaller tags get lost on the honeycomb, and larger ones are not hang tags; our own judgement. */
const widthRange: Readonly<Record<Units, { readonly least: number; readonly most: number }>> = {
  mm: { least: 5, most: 1000 },
  in: { least: 0.25, most: 40 },
};

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
    value: { sample, texts: [], names: undefined },
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

export const workshopKeys = ['stock', 'tie'] as const;

/** A stock or a tie of a workshop file. */
export type WorkshopNote = Pick<SharedEntry, 'name' | 'short'> & { readonly file: string };

export function workshopItems(key: 'stock' | 'tie', notes: readonly WorkshopNote[]): AnswerItem[] {
  const own = { label: 'As the sample has it', description: 'written into the spec', value: { [key]: undefined } };
  return [
    ...notes.map(({ name, short, file }) => ({
      label: name,
      description: short,
      detail: file,
      value: { [key]: { file, name } },
    })),
    own,
  ];
}

/** The change is the label; its effect is the line below. */
export function fixItem(fix: Fix): AnswerItem {
  const { label, effects: detail } = partsOfTitle(fix.title);
  return { label, ...(detail === undefined ? {} : { detail }), value: { fix } };
}

export function widerItem(width: string): AnswerItem {
  return {
    label: width,
    description: 'wide enough for these words to hold, which they do not at the width of the sample',
    value: { width },
  };
}

/** The typed text if it is a width; else the reason why not, which cannot be chosen. */
export function widthItems(typed: string, units: Units): AnswerItem[] {
  const wanted = typed.trim();
  if (wanted === '') {
    return [
      { label: 'As it is', description: 'sized like the sample', value: { width: undefined } },
      ...widths[units].map((width) => ({ label: width, value: { width } })),
    ];
  }
  const width = /\d$/.test(wanted) ? `${wanted} ${units}` : wanted;
  const length = parseLength(width, units);
  if ('problem' in length) return [{ label: length.problem, value: undefined }];
  const { least, most } = widthRange[units];
  if (length.mm < least * mmPer[units] || length.mm > most * mmPer[units]) {
    const label = `A tag cannot be ${wanted} wide: choose a width from ${least} to ${most} ${units}.`;
    return [{ label, value: undefined }];
  }
  return [{ label: width, value: { width } }];
}
