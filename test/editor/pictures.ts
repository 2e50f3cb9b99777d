/**
 * `npm run pictures`: takes anew every picture of the README and of the guide, the walkthrough's among them, in the real editor on the samples, so that they
 * show today's look. `npm run pictures -- NAME…` takes some. Somebody must look at them before they are kept.
 */

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { buildAll } from '../../src/dev/build.ts';
import { launchBrowser } from './browser.ts';
import { Editor, eventually, root } from './editor.ts';

const readme = (name: string): string => join(root, 'test', 'pictures', `${name}.png`);
const walkthrough = (name: string): string => join(root, 'src', 'guide', 'tour', `${name}.png`);

const pictures: Readonly<Record<string, () => Promise<void>>> = {
  'script-name': () => whole('2-script-name.tag.yaml', 700, readme('script-name')),
  'stacked-plate': () => whole('5-stacked-plate.tag.yaml', 700, walkthrough('stacked-plate')),
  'weak-on-purpose': () => whole('7-weak-on-purpose.tag.yaml', 800, readme('weak-on-purpose')),
  'seedling-sheets': () =>
    inEditor({ width: 1400, height: 800 }, async (editor) => {
      await editor.openFile('10-seedling-names.tag.yaml');
      await editor.runCommand('Tagwright: Show Sheets to the Side');
      await withoutSideBar(editor);
      const sheets = () => editor.preview().locator('.piece').count();
      await eventually('the sheets', async () => (await sheets().catch(() => 0)) > 0);
      await editor.page.mouse.move(400, 740);
      await editor.page.locator('.workbench-hover').waitFor({ state: 'hidden' });
      await editor.screenshot(walkthrough('seedling-sheets'));
    }),
  samples: () =>
    inEditor({ width: 1000, height: 700 }, async (editor) => {
      await editor.page.locator('.activitybar [aria-label^="Tagwright"]').first().click();
      const list = editor.preview();
      await list.locator('li .picture path').first().waitFor();
      await eventually('every picture', async () => (await list.locator('li:not(:has(.picture path))').count()) === 0);
      await editor.page.mouse.move(600, 690);
      await editor.page.locator('.workbench-hover').waitFor({ state: 'hidden' });
      await element(editor.page.locator('.part.sidebar'), walkthrough('samples'));
    }),
  help: () =>
    inEditor({ width: 1100, height: 560 }, async (editor) => {
      await withoutSideBar(editor);
      await editor.openFile('5-stacked-plate.tag.yaml');
      await editor.goAfter('[26 mm, 18 mm], radius: 6 mm');
      await editor.type(', ');
      await editor.page.keyboard.press('Control+Space');
      await editor.page.locator('.suggest-widget .monaco-list-row').nth(4).waitFor();
      await cut(editor.page, { x: 60, y: 130, width: 700, height: 330 }, walkthrough('help'));
    }),
  preview: () => preview('2-script-name.tag.yaml', walkthrough('preview')),
  problems: () => preview('7-weak-on-purpose.tag.yaml', walkthrough('problems')),
  cut: () =>
    inEditor({ width: 1000, height: 700 }, async (editor) => {
      const name = '3-engraved-backing.tag.yaml';
      await editor.openFile(name);
      await editor.openPreview();
      await editor.runCommand('Tagwright: Export SVG…');
      const file = join(editor.folder, name.replace('.tag.yaml', '.svg'));
      await editor.acceptQuickInput('.svg');
      let svg = '';
      await eventually('the cut file', () => {
        try {
          svg = readFileSync(file, 'utf8');
        } catch {
          return Promise.resolve(false);
        }
        return Promise.resolve(svg.includes('</svg>'));
      });
      await drawn(svg, walkthrough('cut'));
    }),
};

async function inEditor(
  size: { width: number; height: number },
  take: (editor: Editor) => Promise<void>,
): Promise<void> {
  const editor = await Editor.open({ size, settings: { 'workbench.colorTheme': 'Default Light Modern' } });
  try {
    await take(editor);
  } finally {
    await editor.close();
  }
}

/** The editor with the text and its preview. */
function whole(name: string, height: number, path: string): Promise<void> {
  return inEditor({ width: 1400, height }, async (editor) => {
    await withoutSideBar(editor);
    await editor.openFile(name);
    await settled(editor);
    await editor.screenshot(path);
  });
}

function preview(name: string, path: string): Promise<void> {
  return inEditor({ width: 1500, height: 640 }, async (editor) => {
    await withoutSideBar(editor);
    await editor.openFile(name);
    await settled(editor);
    await element(editor.page.locator('.editor-group-container').last(), path);
  });
}

/** With the caution of the first time read, and all that follows a drawing there. */
async function settled(editor: Editor): Promise<void> {
  const page = await editor.openPreview();
  await page.locator('#takes dl dd').first().waitFor({ state: 'attached' });
  const gotIt = page.getByRole('button', { name: 'Got it' });
  if (await gotIt.isVisible()) await gotIt.click();
  await editor.focusText();
}

async function withoutSideBar(editor: Editor): Promise<void> {
  await editor.page.keyboard.press('Control+b');
  await editor.page.locator('.part.sidebar').waitFor({ state: 'hidden' });
}

async function element(locator: Locator, path: string): Promise<void> {
  await locator.screenshot({ path, animations: 'disabled' });
}

async function cut(
  page: Page,
  clip: { x: number; y: number; width: number; height: number },
  path: string,
): Promise<void> {
  await page.screenshot({ path, clip, animations: 'disabled' });
}

/** A file as it stands, on white. */
async function drawn(svg: string, path: string): Promise<void> {
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 680, height: 355 } });
    await page.setContent(
      `<style>body{margin:20px;background:#fff}svg{width:640px;height:315px}</style>${svg.replace(/^<\?xml.*?\?>/, '')}`,
    );
    await page.locator('svg').first().waitFor();
    await page.screenshot({ path });
  } finally {
    await browser.close();
  }
}

const wanted = process.argv.slice(2);
const unknown = wanted.filter((name) => !(name in pictures));
if (unknown.length > 0)
  throw new Error(`There is no picture ${unknown.join(', ')}; there are ${Object.keys(pictures).join(', ')}.`);
await buildAll();
for (const [name, take] of Object.entries(pictures)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  await take();
  console.log(name);
}
