/** Export commands. */

import * as vscode from 'vscode';
import type { Engine } from '../../engine/engine.ts';
import { isError } from '../../core/issue.ts';
import { allFormats, sheetFormats } from '../../export/formats.ts';
import { jobOf } from '../../export/job/job.ts';
import { toSvg } from '../../export/svg.ts';
import { inBackground } from '../common/background.ts';
import { computeOptions } from '../service/compute-options.ts';
import { askFaulty, sayNothingToCut } from './ask-faulty.ts';
import { Exporter, fileNameOf, currentText } from './exporter.ts';
import type { ExportRequest } from './request.ts';
import { offerMore } from './offer-more.ts';
import { askFolder, askFormats, askPackKind, askScope } from './export-questions.ts';
import type { TagService } from '../service/service.ts';
import type { CommandTarget } from '../common/target.ts';
import type { SheetMaking } from '../sheets/sheets-view.ts';
import { stepDone } from '../features/walkthrough.ts';
import { specName } from '../../core/names.ts';
import { baseName } from '../common/write-whole.ts';
import type { WriteWhole } from '../common/write-whole.ts';

/** Each command takes a spec or, from other extensions and tests, a whole request, and returns the files written. */
export function registerExports(
  context: vscode.ExtensionContext,
  target: CommandTarget,
  service: TagService,
  making: SheetMaking,
  writeWhole: WriteWhole,
): vscode.Disposable {
  const { engine } = making;
  const exporter = new Exporter(making, context.extensionUri, writeWhole);
  const run = async (asked: Promise<ExportRequest | undefined>): Promise<vscode.Uri[]> => {
    const request = await asked;
    const written = request ? await exporter.run(request) : [];
    if (written.length > 0) done(written);
    return written;
  };
  const command = (name: string, ask: (spec: vscode.Uri) => Promise<ExportRequest | undefined>) =>
    vscode.commands.registerCommand(name, async (given?: unknown) => {
      if (isRequest(given)) return exporter.run(given);
      const spec = await target.of(given);
      return spec && run(ask(spec));
    });
  return vscode.Disposable.from(
    command('tagwright.export', (spec) => askExport(spec, service, context.globalState)),
    command('tagwright.makePack', (spec) => askPack(spec, service)),
    command('tagwright.exportSheets', (spec) => askLayout(spec, context.globalState)),
    target.command('tagwright.exportSvg', (spec) => exportSvg(spec, service, engine, writeWhole)),
  );
}

function isRequest(target: unknown): target is ExportRequest {
  return typeof target === 'object' && target !== null && 'specs' in target && 'what' in target && 'to' in target;
}

async function askExport(
  spec: vscode.Uri,
  service: TagService,
  memory: vscode.Memento,
): Promise<ExportRequest | undefined> {
  const scope = await askScope(spec, service);
  const formats = scope && (await askFormats(memory, allFormats));
  const to = formats && (await askFolder('Export to', folderOf(scope.specs[0]!)));
  return to && { ...scope, what: { formats }, to };
}

async function askPack(spec: vscode.Uri, service: TagService): Promise<ExportRequest | undefined> {
  const scope = await askScope(spec, service);
  const packs = scope && (await askPackKind());
  if (!packs) return undefined;
  const [first] = scope.specs;
  const folder = folderOf(first!);
  const to =
    packs === 'folders'
      ? await askFolder('Put the pack in', folder)
      : await vscode.window.showSaveDialog({
          title: 'Make a Pack',
          filters: { Archive: ['zip'] },
          ...(folder ? { defaultUri: vscode.Uri.joinPath(folder, `${specName(baseName(first!))}.zip`) } : {}),
        });
  // The save dialog for an archive has already asked whether to replace one.
  return to && { ...scope, what: { packs }, to, ...(packs === 'archive' ? { existing: 'replace' } : {}) };
}

async function askLayout(spec: vscode.Uri, memory: vscode.Memento): Promise<ExportRequest | undefined> {
  const sheets = await askFormats(memory, sheetFormats);
  const to = sheets && (await askFolder('Put the sheets in', folderOf(spec)));
  return to && { specs: [spec], what: { sheets }, to };
}

/** An unsaved spec has no folder of its own. */
function folderOf(spec: vscode.Uri): vscode.Uri | undefined {
  return spec.scheme === 'untitled' ? vscode.workspace.workspaceFolders?.[0]?.uri : vscode.Uri.joinPath(spec, '..');
}

/** “Export SVG”: asks where to save, writes the file atomically, and offers to show it. */
async function exportSvg(
  uri: vscode.Uri,
  service: TagService,
  engine: Engine,
  writeWhole: WriteWhole,
): Promise<vscode.Uri | undefined> {
  const text = await currentText(uri);
  const known = service.get(uri)?.report;
  const options = computeOptions(uri, new AbortController().signal, known?.row);
  const report = known?.source.text === text ? known : await engine.compute(text, options);
  const job = jobOf(report);
  if (!job) {
    void sayNothingToCut(uri, report);
    return undefined;
  }
  const folder = folderOf(uri);
  const ownName = fileNameOf(uri, report);
  // Errors of the tag that is shown; those of other tags in its batch do not matter here.
  const isFaulty = report.issues.some(isError);
  if (isFaulty && (await askFaulty([{ spec: uri, name: ownName, report }], false)) !== 'include') return undefined;
  const name = `${ownName}.svg`;
  const target = await vscode.window.showSaveDialog({
    defaultUri: folder ? vscode.Uri.joinPath(folder, name) : vscode.Uri.file(name),
    filters: { SVG: ['svg'] },
    title: 'Export SVG',
  });
  if (!target) return undefined;
  await writeWhole(target, new TextEncoder().encode(toSvg(job)));
  done([target]);
  return target;
}

function done(written: readonly vscode.Uri[]): void {
  stepDone('exported');
  inBackground(offerMore(written), 'offer what can be done with exported files');
}
