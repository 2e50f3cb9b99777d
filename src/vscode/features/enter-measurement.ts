/**
 * “Enter a Measurement”: asks for the reading of a test piece and writes it into the stock or tie, with the date, as
 * one step.
 */

import { unitsOf } from '../../core/values.ts';
import * as vscode from 'vscode';
import { today } from '../../core/days.ts';
import { measuredPlace } from '../../edits/chosen-place.ts';
import type { YamlPath } from '../../core/issue.ts';
import type { Units } from '../../core/units.ts';
import { measurementNames, measurements, withMeasured } from '../../test-pieces/measurements.ts';
import type { Measurement, MeasurementName } from '../../test-pieces/measurements.ts';
import { isTagSpec } from '../common/documents.ts';
import type { TagService } from '../service/service.ts';
import { sourceOf } from '../service/sources.ts';
import { putCursor, showText } from '../common/tabs.ts';
import { editsBetween } from '../common/text-edits.ts';
import { sharedEntries } from './workshop-files.ts';

/** Target of the answer. */
interface MeasurementTarget {
  readonly uri: vscode.Uri;
  readonly path: YamlPath;
  readonly name: string;
  readonly short: string;
}

/** Answers given instead of asking; `day` is year-month-day. */
export interface Given {
  readonly what?: MeasurementName;
  readonly typed?: string;
  readonly day?: string;
}

/** `spec`: the measurement goes into its stock, unless another is chosen. */
export async function enterMeasurement(
  service: TagService,
  spec: vscode.Uri | undefined,
  given: Given = {},
): Promise<void> {
  const what = given.what ?? (await chooseWhat());
  if (!what) return;
  const measurement: Measurement = measurements[what];
  const places = await placesFor(measurement.of, service, spec);
  const place = places.length > 1 && given.typed === undefined ? await choosePlace(measurement, places) : places[0];
  if (!place) {
    if (places.length === 0) await offerWorkshop(measurement.of);
    return;
  }
  const document = await vscode.workspace.openTextDocument(place.uri);
  const units = unitsOf(sourceOf(document).value);
  const typed = given.typed ?? (await ask(measurement, place, units));
  if (typed === undefined) return;
  const answer = measurement.read(typed, units);
  if ('problem' in answer) {
    void vscode.window.showErrorMessage(answer.problem);
    return;
  }
  const day = given.day ?? today();
  const before = document.getText();
  const after = withMeasured(before, place.path, answer.values, { ...measurement, day });
  if (after === undefined) {
    void vscode.window.showErrorMessage(`“${place.name}” is empty: write {} after its name first.`);
    return;
  }
  const edit = new vscode.WorkspaceEdit();
  for (const { range, text } of editsBetween(before, after))
    edit.replace(place.uri, new vscode.Range(document.positionAt(range.start), document.positionAt(range.end)), text);
  if (!(await vscode.workspace.applyEdit(edit))) return;
  putCursor(await showText(place.uri), sourceOf(document).range(place.path).start);
  const valuesInWords = answer.values.map(([path, text]) => `${path.at(-1)} ${text}`).join(', ');
  void vscode.window.showInformationMessage(
    [`${place.name}: ${valuesInWords}, measured on ${day}.`, answer.doubt]
      .filter((part) => part !== undefined)
      .join(' '),
  );
}

async function chooseWhat(): Promise<MeasurementName | undefined> {
  const items = measurementNames.map((name) => ({
    label: measurements[name].title,
    detail: measurements[name].question,
    name,
  }));
  return (await vscode.window.showQuickPick(items, { title: 'Enter a measurement', placeHolder: 'What was measured?' }))
    ?.name;
}

/** First the stock or tie of the spec, then those of all workshop files. */
async function placesFor(
  of: Measurement['of'],
  service: TagService,
  spec: vscode.Uri | undefined,
): Promise<MeasurementTarget[]> {
  const shared = (await sharedEntries(`${of}s`)).flatMap(({ uri, name, short, machines }): MeasurementTarget[] => [
    { uri, path: [`${of}s`, name], name, short: machines.length === 0 ? short : `${short}, on any machine` },
    ...machines.map((machine) => ({
      uri,
      path: [`${of}s`, name, 'machines', machine],
      name: onMachine(name, machine),
      short,
    })),
  ]);
  const own = spec && isTagSpec(spec) ? await ownPlace(of, service, spec) : undefined;
  const key = ({ uri, path }: MeasurementTarget) => JSON.stringify([uri.toString(), path]);
  return [...new Map([...(own ? [own] : []), ...shared].map((place) => [key(place), place])).values()];
}

async function ownPlace(
  of: Measurement['of'],
  service: TagService,
  spec: vscode.Uri,
): Promise<MeasurementTarget | undefined> {
  const source = sourceOf(await vscode.workspace.openTextDocument(spec));
  const found = measuredPlace(of, source, service.get(spec)?.report.uses.used ?? []);
  if (!found) return undefined;
  const { file, path, machine } = found;
  const name = onMachine(found.name ?? `the ${of} of this spec`, machine);
  return { uri: file === undefined ? spec : vscode.Uri.parse(file), path, name, short: 'of the tag in the editor' };
}

function onMachine(stock: string, machine: string | undefined): string {
  return machine === undefined ? stock : `${stock} on ${machine}`;
}

async function choosePlace(
  { of, title }: Measurement,
  places: readonly MeasurementTarget[],
): Promise<MeasurementTarget | undefined> {
  const items = places.map((place) => ({
    label: place.name,
    description: place.short,
    detail: vscode.workspace.asRelativePath(place.uri),
    place,
  }));
  return (await vscode.window.showQuickPick(items, { title, placeHolder: `For which ${of}?` }))?.place;
}

function ask(measurement: Measurement, { name }: MeasurementTarget, units: Units): Thenable<string | undefined> {
  return vscode.window.showInputBox({
    title: `${measurement.title}: ${name}`,
    prompt: `${measurement.question}${/^\d/.test(measurement.example) ? ` In ${units}.` : ''}`,
    placeHolder: `Such as ${measurement.example}`,
    ignoreFocusOut: true,
    validateInput: (typed) => {
      if (typed === '') return undefined;
      const answer = measurement.read(typed, units);
      return 'problem' in answer ? answer.problem : undefined;
    },
  });
}

async function offerWorkshop(of: Measurement['of']): Promise<void> {
  const create = 'New Workshop File…';
  const message = `There is no ${of} to enter this for. Make a workshop file for your stocks and ties, or give the spec a ${of}.`;
  if ((await vscode.window.showInformationMessage(message, create)) === create)
    await vscode.commands.executeCommand('tagwright.newWorkshopFile');
}
