/**
 * “New Workshop File”: a few questions with defaults filled in, then a new file in the folder, explained line by line.
 */

import * as vscode from 'vscode';
import { stockName, workshopText } from '../../language/workshop-text.ts';
import { materialNames } from '../../strength/materials.ts';
import { mostMm } from '../../spec/model/measured-values.ts';
import { fileExists } from '../common/documents.ts';
import { problemOfLength, problemOfSize, sidesOf, withUnit } from '../common/typed-lengths.ts';
import { showText } from '../common/tabs.ts';

const title = 'New workshop file';
const steps = 5;

/** The file written; `undefined` if cancelled. */
export async function newWorkshopFile(): Promise<vscode.Uri | undefined> {
  const folder = vscode.workspace.workspaceFolders?.[0]?.uri;
  if (!folder) {
    void vscode.window.showErrorMessage('Open a folder first: a workshop file belongs beside the specs that use it.');
    return undefined;
  }
  const material = await chooseMaterial();
  if (material === undefined) return undefined;
  const thickness = await askLength(
    2,
    'How thick is the sheet? Measure it: sheets are rarely as thick as their label says.',
    {
      value: '3 mm',
      most: mostMm.thickness,
    },
  );
  if (thickness === undefined) return undefined;
  const kerf = await askLength(
    3,
    'What is the kerf, the width that the beam removes? Leave this empty until you have cut a kerf test.',
    {
      value: '',
      most: mostMm.kerf,
      isOptional: true,
    },
  );
  if (kerf === undefined) return undefined;
  const sheet = await askSheet();
  if (sheet === undefined) return undefined;
  const twine = await askLength(5, 'How thick is the twine you tie tags on with? Leave this empty if it varies.', {
    value: '2 mm',
    most: mostMm.opening,
    isOptional: true,
  });
  if (twine === undefined) return undefined;
  const text = workshopText({
    units: thickness.endsWith('in') ? 'in' : 'mm',
    stock: stockName(material, thickness),
    material,
    thickness,
    kerf: kerf === '' ? undefined : kerf,
    sheet: sheet === '' ? undefined : (sheet.split('×').map((side) => side.trim()) as [string, string]),
    twine: twine === '' ? undefined : twine,
  });
  const uri = await freeFile(folder);
  await vscode.workspace.fs.writeFile(uri, new TextEncoder().encode(text));
  await showText(uri);
  return uri;
}

interface MaterialItem extends vscode.QuickPickItem {
  readonly material: string;
}

async function chooseMaterial(): Promise<string | undefined> {
  const pick = vscode.window.createQuickPick<MaterialItem>();
  const items = materialNames.map((material) => ({ label: material, material }));
  // A placeholder would be shown as a tooltip as well, over the title.
  pick.title = `${title}: Which material do you cut most? Choose one, or type its name`;
  pick.step = 1;
  pick.totalSteps = steps;
  pick.ignoreFocusOut = true;
  pick.items = items;
  pick.onDidChangeValue((typed) => {
    const material = typed.trim();
    const isKnown = material === '' || items.some(({ label }) => label === material);
    pick.items = isKnown ? items : [...items, { label: `Use “${material}”`, material, alwaysShow: true }];
  });
  return new Promise((resolve) => {
    pick.onDidAccept(() => {
      const [chosen] = pick.activeItems;
      if (chosen) resolve(chosen.material);
      pick.hide();
    });
    pick.onDidHide(() => {
      resolve(undefined);
      pick.dispose();
    });
    pick.show();
  });
}

interface LengthQuestion {
  readonly value: string;
  /** In mm. */
  readonly most: number;
  readonly isOptional?: boolean;
}

/** A length with its unit; empty if that is allowed. */
async function askLength(
  step: number,
  prompt: string,
  { value, most, isOptional }: LengthQuestion,
): Promise<string | undefined> {
  const typed = await vscode.window.showInputBox({
    title: `${title} (${step}/${steps})`,
    prompt,
    value,
    ignoreFocusOut: true,
    validateInput: (text) => (text.trim() === '' && isOptional ? undefined : problemOfLength(text, most)),
  });
  return typed === undefined ? undefined : withUnit(typed);
}

/** For example `600 mm × 300 mm`. */
async function askSheet(): Promise<string | undefined> {
  const typed = await vscode.window.showInputBox({
    title: `${title} (4/${steps})`,
    prompt: 'How large are your sheets? Leave this empty if they vary.',
    value: '600 × 300 mm',
    ignoreFocusOut: true,
    validateInput: (text) => (text.trim() === '' ? undefined : problemOfSize(text)),
  });
  return typed === undefined || typed.trim() === '' ? typed : sidesOf(typed).join(' × ');
}

async function freeFile(folder: vscode.Uri): Promise<vscode.Uri> {
  for (let count = 1; ; count++) {
    const uri = vscode.Uri.joinPath(folder, count === 1 ? 'my.workshop.yaml' : `my-${count}.workshop.yaml`);
    if (!(await fileExists(uri))) return uri;
  }
}
