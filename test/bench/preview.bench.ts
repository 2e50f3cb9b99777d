/**
 * The preview in the real editor: `npm run bench:preview`, on a quiet machine.
 *
 * typing: from a keystroke in the lettering to the painted drawing, the wait for the typing to settle included; each keystroke
 * waits for the drawing of the one before.
 * a plate: the same for the title of a rectangle, which takes 1 ms to compute: what the editor and the browser take by themselves.
 * dragging: the time between frames while a ring of a twelve-letter tag is dragged, and the longest task meanwhile.
 * panning: the same while forty pieces are panned.
 * Times in ms. A browser without a graphics card paints on the processor, which the computing shares.
 */

import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Frame, FrameLocator, Page } from 'playwright-core';
import { buildAll } from '../../src/dev/build.ts';
import { Editor } from '../editor/editor.ts';

const keystrokes = 200;
/** Moves of the pointer in a drag or a pan, and how long each takes, in ms: as fast as a mouse reports. */
const moves = 180;
const moveMs = 16;

const twelveLetters = `tagwright: 1
stock: {thickness: 3 mm, kerf: 0.16 mm, min_web: 1.5 mm}
tie: {twine: 2 mm}
shapes:
  name: {text: Wordsmithing, font: Pacifico, width: 110 mm, grow: 0.4 mm}
pieces:
  tag: {body: [name], hanger: {ring: {at: left}}}
`;

const plate = `tagwright: 1
title: Wordsmithing
shapes:
  plate: {rectangle: [110 mm, 40 mm]}
pieces:
  tag: {body: [plate]}
`;

const names = ['Sorrel', 'Fennel', 'Borage', 'Lovage', 'Chives', 'Thyme', 'Sage', 'Mint', 'Dill', 'Rue'];

const fortyPieces = `tagwright: 1
stock: {material: walnut, thickness: 3 mm, kerf: 0.16 mm}
tie: {twine: 2 mm}
shapes:
  plate: {rectangle: [70 mm, 30 mm], radius: 6 mm}
${names.map((name) => `  ${name.toLowerCase()}: {text: ${name}, font: Pacifico, width: 44 mm, place: {on: plate}}`).join('\n')}
pieces:
${Array.from({ length: 40 }, (_, nth) => {
  const name = names[nth % names.length]!.toLowerCase();
  return `  ${name}-${nth}: {body: [plate], engrave: [${name}], hanger: {hole: {at: left}}}`;
}).join('\n')}
`;

interface Frames {
  /** Times from one frame to the next. */
  readonly gaps: number[];
  readonly longestTask: number;
}

function percentile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}

/** When each version of the drawing was painted, by a clock that all frames of the browser share. */
/** The page itself, which stays while one measures. */
async function frameOf(preview: FrameLocator): Promise<Frame> {
  return (await (await preview.owner().elementHandle()).contentFrame())!;
}

async function watchPaints(preview: Frame): Promise<void> {
  await preview.evaluate(() => {
    const painted: Record<string, number> = {};
    Object.assign(window, { painted });
    const drawing = document.querySelector<SVGElement>('#drawing')!;
    new MutationObserver(() => {
      const version = drawing.dataset['version']!;
      // The second frame begins once the first has been painted.
      requestAnimationFrame(() => {
        requestAnimationFrame(() => {
          painted[version] ??= performance.timeOrigin + performance.now();
        });
      });
    }).observe(drawing, { attributeFilter: ['data-version'] });
  });
}

async function typing(editor: Editor, preview: Frame): Promise<number[]> {
  await watchPaints(preview);
  await editor.page.evaluate(() => {
    document.addEventListener(
      'keydown',
      ({ timeStamp }) => Object.assign(window, { pressed: performance.timeOrigin + timeStamp }),
      { capture: true },
    );
  });
  const version = () => preview.locator('#drawing').getAttribute('data-version');
  const times: number[] = [];
  for (let nth = 0; nth < keystrokes; nth++) {
    const before = await version();
    // Words of twelve and thirteen letters, no two of them the same within a round.
    await editor.page.keyboard.press(nth % 2 === 0 ? 'abcdefghijklmnopqrstuvwxyz'[(nth / 2) % 26]! : 'Backspace');
    const shown = await preview.waitForFunction(
      (old) => {
        const now = document.querySelector<SVGElement>('#drawing')!.dataset['version']!;
        return now === old ? undefined : (window as unknown as { painted: Record<string, number> }).painted[now];
      },
      before,
      { polling: 'raf' },
    );
    const pressed = await editor.page.evaluate(() => (window as unknown as { pressed: number }).pressed);
    times.push((await shown.jsonValue())! - pressed);
  }
  return times;
}

/** Measures the page's frames while the pointer moves in a circle from where it is. */
async function circling(
  page: Page,
  preview: Frame,
  [x, y]: readonly [number, number],
  radius: number,
): Promise<Frames> {
  // The loader that runs this names functions by a helper that the page does not have.
  await preview.evaluate('globalThis.__name = (value) => value');
  await preview.evaluate(() => {
    const watched = { gaps: [] as number[], longestTask: 0, on: true };
    Object.assign(window, { watched });
    new PerformanceObserver((list) => {
      for (const { duration } of list.getEntries()) watched.longestTask = Math.max(watched.longestTask, duration);
    }).observe({ type: 'longtask' });
    let last = performance.now();
    const tick = (now: number): void => {
      watched.gaps.push(now - last);
      last = now;
      if (watched.on) requestAnimationFrame(tick);
    };
    requestAnimationFrame(tick);
  });
  await page.mouse.move(x, y);
  await page.mouse.down();
  for (let move = 1; move <= moves; move++) {
    const turn = (4 * Math.PI * move) / moves;
    await page.mouse.move(x + radius * Math.sin(turn), y + radius * (1 - Math.cos(turn)));
    await page.waitForTimeout(moveMs);
  }
  const frames = await preview.evaluate(() => {
    const { watched } = window as unknown as { watched: Frames & { on: boolean } };
    watched.on = false;
    return { gaps: watched.gaps.slice(1), longestTask: watched.longestTask };
  });
  await page.keyboard.press('Escape');
  await page.mouse.up();
  return frames;
}

async function middleOf(preview: Frame, selector: string): Promise<[number, number]> {
  const { x, y, width, height } = (await preview.locator(selector).first().boundingBox())!;
  return [x + width / 2, y + height / 2];
}

function printTimes(what: string, times: readonly number[]): void {
  console.log(
    `${what.padEnd(12)} ${times.length} keystrokes: p50 ${percentile(times, 0.5).toFixed(0)}, ` +
      `p95 ${percentile(times, 0.95).toFixed(0)}, longest ${Math.max(...times).toFixed(0)}`,
  );
}

function printFrames(what: string, { gaps, longestTask }: Frames): void {
  const mean = gaps.reduce((sum, gap) => sum + gap, 0) / gaps.length;
  console.log(
    `${what.padEnd(12)} ${(1000 / mean).toFixed(0)} frames a second, p95 ${percentile(gaps, 0.95).toFixed(0)}, ` +
      `longest ${Math.max(...gaps).toFixed(0)}; longest task ${longestTask.toFixed(0)} (0: none over 50)`,
  );
}

const folder = mkdtempSync(join(tmpdir(), 'tagwright-bench-'));
writeFileSync(join(folder, 'letters.tag.yaml'), twelveLetters);
writeFileSync(join(folder, 'plate.tag.yaml'), plate);
writeFileSync(join(folder, 'forty.tag.yaml'), fortyPieces);
try {
  await buildAll();
  const editor = await Editor.open({ folder, size: { width: 1500, height: 900 } });
  try {
    await editor.openFile('plate.tag.yaml');
    const plain = await frameOf(await editor.openPreview());
    await editor.goAfter('title: Wordsmithing');
    printTimes('a plate', await typing(editor, plain));

    await editor.openFile('letters.tag.yaml');
    const letters = await frameOf(await editor.openPreview());
    await editor.goAfter('text: Wordsmithing');
    printTimes('typing', await typing(editor, letters));
    printFrames('dragging', await circling(editor.page, letters, await middleOf(letters, '.hanger'), 40));

    await editor.openFile('forty.tag.yaml');
    const forty = await frameOf(await editor.openPreview());
    const [x, y] = await middleOf(forty, '#stage');
    await forty.locator('[data-zoom=in]').click();
    printFrames('panning', await circling(editor.page, forty, [x, y], 120));
  } finally {
    await editor.close();
  }
} finally {
  rmSync(folder, { recursive: true, force: true });
}
