/**
 * “New Test Piece”: asks for the kind and the stock, and creates an unsaved spec with its preview, to be exported like
 * any other.
 */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { letteringOf } from '../../language/new-tag.ts';
import { accepted } from '../../test-pieces/accepted.ts';
import { fieldValues, usualFor, usualPowers, usualSpeeds } from '../../test-pieces/engraving-field.ts';
import type { FieldValues } from '../../test-pieces/test-piece.ts';
import { headOfSpec, headOfUsed } from '../../test-pieces/stock-head.ts';
import type { StockHead } from '../../test-pieces/stock-head.ts';
import { testPieceNames, testPieces } from '../../test-pieces/all.ts';
import type { TestPieceName } from '../../test-pieces/all.ts';
import { computeOptions } from '../service/compute-options.ts';
import { isTagSpec } from '../common/documents.ts';
import { DraftDocument } from './draft.ts';
import type { TagService } from '../service/service.ts';
import { sourceOf } from '../service/sources.ts';
import { pathFrom, sharedEntries } from './workshop-files.ts';

interface StockChoice extends StockHead {
  readonly font?: string | undefined;
}

/** `spec`: source of stock and font, unless others are chosen. `which`: used instead of asking. */
export async function newTestPiece(
  engine: Engine,
  service: TagService,
  spec: vscode.Uri | undefined,
  which?: TestPieceName,
): Promise<vscode.Uri | undefined> {
  const name = which ?? (await chooseWhich());
  if (!name) return undefined;
  const stock = await chooseStock(await stocksFor(service, spec));
  if (!stock) return undefined;
  const field = name === 'field' && which === undefined ? await askField() : usualField;
  if (!field) return undefined;
  const { title, spec: write } = testPieces[name];
  const fileName = `${title.toLowerCase()} ${stock.name}`.replaceAll(/[^\w-]+/g, '-');
  const text = write({ ...stock, font: stock.font ?? 'Nunito', field });
  const draft = await DraftDocument.open(`${fileName}.tag.yaml`, text);
  await draft.set(await accepted(engine, text, computeOptions(draft.uri, new AbortController().signal)));
  return draft.uri;
}

const usualField: FieldValues = { powers: usualPowers, speeds: usualSpeeds };

async function askField(): Promise<FieldValues | undefined> {
  const powers = await askValues('powers', 'Which powers is the engraving tried at?');
  const speeds = powers && (await askValues('speeds', 'And which speeds?'));
  return powers && speeds && { powers, speeds };
}

async function askValues(what: keyof FieldValues, prompt: string): Promise<readonly string[] | undefined> {
  const typed = await vscode.window.showInputBox({
    title: 'New test piece: engraving field',
    prompt: `${prompt} Two to five, with commas between.`,
    value: usualFor(what),
    ignoreFocusOut: true,
    validateInput: (text) => {
      const result = fieldValues(what, text);
      return 'problem' in result ? result.problem : undefined;
    },
  });
  const result = typed === undefined ? undefined : fieldValues(what, typed);
  return result && 'values' in result ? result.values : undefined;
}

async function chooseWhich(): Promise<TestPieceName | undefined> {
  const items = testPieceNames.map((name) => ({
    label: testPieces[name].title,
    detail: `Finds ${testPieces[name].finds}.`,
    name,
  }));
  const title = 'New test piece';
  return (await vscode.window.showQuickPick(items, { title, placeHolder: 'Which test piece?', matchOnDetail: true }))
    ?.name;
}

interface StockItem extends vscode.QuickPickItem {
  readonly stock: StockChoice;
}

async function stocksFor(service: TagService, spec: vscode.Uri | undefined): Promise<StockItem[]> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri ?? vscode.Uri.parse('untitled:/');
  const source = spec && isTagSpec(spec) ? sourceOf(await vscode.workspace.openTextDocument(spec)) : undefined;
  const font = source && letteringOf(source)[0]?.font;
  const shared = (await sharedEntries('stocks')).flatMap(({ uri, name, short, machines }) =>
    [undefined, ...machines].map((machine): StockItem => {
      const stock = { ...headOfUsed(pathFrom(folder, uri), name, machine), font };
      const label = machine === undefined ? name : `${name} on ${machine}`;
      return { label, description: short, detail: vscode.workspace.asRelativePath(uri), stock };
    }),
  );
  if (!source || !spec) return shared;
  const used = service.get(spec)?.report.uses.used ?? [];
  const own = headOfSpec(source, used, (file) => pathFrom(folder, vscode.Uri.parse(file)));
  const detail = vscode.workspace.asRelativePath(spec);
  const item: StockItem = {
    label: own.name,
    description: 'stock of the tag in the editor',
    detail,
    stock: { ...own, font },
  };
  return [item, ...shared.filter(({ stock }) => stock.head.join() !== own.head.join())];
}

async function chooseStock(items: readonly StockItem[]): Promise<StockChoice | undefined> {
  if (items.length > 1)
    return (await vscode.window.showQuickPick(items, { title: 'New test piece', placeHolder: 'Cut from which stock?' }))
      ?.stock;
  return items[0]?.stock ?? { head: [], name: 'unnamed stock' };
}
