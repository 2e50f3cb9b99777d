/** “New Tag…”: asks for kind, words, font and size; the preview shows each answer before it is given. */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { kindNames, sampleIn } from '../../language/new-tag.ts';
import { plainName } from '../../export/file-names.ts';
import { parseSpec } from '../../spec/parse.ts';
import { inBackground } from '../common/background.ts';
import { DraftDocument } from './draft.ts';
import { withoutFirstComment } from '../samples/sample-library.ts';
import type { SampleLibrary } from '../samples/sample-library.ts';
import type { WorkspaceContext } from '../service/workspace-context.ts';
import type { SpecMoves } from '../service/spec-moves.ts';
import type { SharedGroup } from '../../language/shared-values.ts';
import { pathFrom, sharedEntries, unitsOfNewTags } from './workshop-files.ts';
import { Questions } from './new-tag-questions.ts';
import type { Prepared } from './new-tag-questions.ts';
import { specTextOf, wordsOf } from './new-tag-text.ts';

export interface NewTagServices {
  readonly samples: SampleLibrary;
  readonly engine: Engine;
  readonly moves: SpecMoves;
  readonly surroundings: WorkspaceContext;
  /** Keeps the drawing in a preview below a list of so many rows at the top of the window; 0: no longer. */
  readonly cover: (spec: vscode.Uri, rows: number) => void;
}

/** Creates an unsaved spec named after its words; leaves nothing behind if it is cancelled. */
export async function newTag(services: NewTagServices): Promise<vscode.Uri | undefined> {
  const { samples, engine, moves, surroundings, cover } = services;
  const prepared = prepare(samples);
  const opening = prepared.then(({ samples: [first] }) =>
    DraftDocument.open('tag.tag.yaml', withoutFirstComment(first!.text), true),
  );
  // Fonts are listed until they are asked for.
  const listing = opening.then((draft) => surroundings.withFiles(draft.home));
  inBackground(listing, 'list the fonts');
  const coverDraft = (rows: number): void => {
    const covering = opening.then((draft) => {
      cover(draft.uri, rows);
    });
    inBackground(covering, 'make room for a question');
  };
  const answers = await new Questions(opening, engine, prepared, surroundings, coverDraft).ask();
  const draft = await opening;
  if (!answers) {
    await draft.discard();
    return undefined;
  }
  cover(draft.uri, 0);
  const text = specTextOf(answers);
  await draft.set(text);
  const name = parseSpec(text).batch?.title ?? wordsOf(answers).join(' ');
  await draft.rename(`${plainName(name)}.tag.yaml`, moves);
  await draft.show();
  return draft.uri;
}

async function prepare(library: SampleLibrary): Promise<Prepared> {
  const units = await unitsOfNewTags();
  const samples = (await library.all())
    .filter(({ fileName }) => fileName in kindNames)
    .map((sample) => ({ ...sample, text: sampleIn(units, sample.text) }));
  // Files of a workshop lie in folders, so without one there are none.
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  const notes = async (group: SharedGroup) =>
    folder ? (await sharedEntries(group)).map((each) => ({ ...each, file: pathFrom(folder, each.uri) })) : [];
  return { samples, units, stock: await notes('stocks'), tie: await notes('ties') };
}
