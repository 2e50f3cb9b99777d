/**
 * Where the page writes: over all samples, at three sizes of the page, with all kinds of hangers in turn. What a label lies on is
 * asked of the browser (SVG 2, `isPointInFill`), not of what placed it.
 */

import assert from 'node:assert/strict';
import type { Page } from 'playwright-core';
import { withEdits } from '../../src/fixes/find-fixes.ts';
import { unitConversion } from '../../src/language/refactor/convert-units.ts';
import { SpecSource } from '../../src/spec/yaml/source.ts';
import { samples } from '../unit/support/samples.ts';
import { isWhole } from '../unit/support/sweep.ts';
import { messagesOf, type SpecMessages } from './spec-scenes.ts';
import { usePreview } from './use-preview.ts';

const sizes = [
  { width: 1500, height: 900 },
  { width: 900, height: 700 },
  { width: 600, height: 700 },
] as const;

/** In place of the sample's own: each kind for every third sample. */
const hangers = ['{ring: {at: top}}', '{hole: {at: left}}', '{slot: {at: top}}'];
const hangersFor = (sample: number): readonly string[] => (isWhole ? hangers : [hangers[sample % hangers.length]!]);

interface Specimen {
  readonly name: string;
  readonly messages: SpecMessages;
}

async function specimens(): Promise<Specimen[]> {
  const found: Specimen[] = [];
  for (const [index, { name, text }] of samples.entries()) {
    const own = hangersFor(index);
    const variants = /hanger: .*/.test(text) ? own.map((each) => text.replace(/hanger: .*/, `hanger: ${each}`)) : [];
    const inInches = withEdits(text, unitConversion(new SpecSource(text))!.edits);
    for (const [nth, variant] of [text, ...variants, inInches].entries()) {
      const messages = await messagesOf(variant, found.length + 1);
      const isLast = nth > variants.length;
      found.push({ name: `${name}, ${nth === 0 ? 'as it is' : isLast ? 'in inches' : own[nth - 1]!}`, messages });
    }
  }
  return found;
}

/** The pieces that are made of words alone: the samples call them so. */
function letteringIn({ scene: { scene } }: SpecMessages): string[] {
  return scene!.pieces
    .filter(({ shapes }) => shapes.every(({ label }) => /^(name|letter|word)$/.test(label)))
    .map(({ id }) => id);
}

/** What is wrong with the labels that are seen, in words; and which figures there are. */
function judged(page: Page, letteringPieces: readonly string[]): Promise<{ faults: string[]; figures: string[] }> {
  return page.evaluate((lettering) => {
    const stage = document.querySelector('#stage')!.getBoundingClientRect();
    const rulers = [...document.querySelectorAll('.rulers .strip')].map((strip) => strip.getBoundingClientRect());
    const [across, down] = [
      rulers.find(({ width, height }) => width > height)!,
      rulers.find(({ width, height }) => height > width)!,
    ];
    const room = { left: down.right, top: across.bottom, right: stage.right, bottom: stage.bottom };
    const labels = [
      ...[...document.querySelectorAll('.dimension')].map((element) => ({
        name: element.querySelector('text')!.textContent,
        box: element.querySelector('.figure-chip')!.getBoundingClientRect(),
        words: element.querySelector('text')!.getBoundingClientRect(),
      })),
      ...[...document.querySelectorAll('.pin:not(.away)')].map((element) => {
        const box = element.getBoundingClientRect();
        return { name: `pin ${element.textContent} ${element.getAttribute('data-spot')!}`, box, words: box };
      }),
    ];
    const faults: string[] = [];
    const within = (
      inner: DOMRect,
      outer: { left: number; top: number; right: number; bottom: number },
      slack: number,
    ) =>
      inner.left >= outer.left - slack &&
      inner.top >= outer.top - slack &&
      inner.right <= outer.right + slack &&
      inner.bottom <= outer.bottom + slack;
    labels.forEach(({ name, box, words }, index) => {
      if (!within(box, room, 0)) faults.push(`${name} is cut off`);
      // The line box of the words is higher than the words.
      if (!within(words, box, 3)) faults.push(`${name} is wider than its chip`);
      for (const other of labels.slice(index + 1)) {
        const apart =
          box.right <= other.box.left ||
          other.box.right <= box.left ||
          box.bottom <= other.box.top ||
          other.box.bottom <= box.top;
        if (!apart) faults.push(`${name} lies on ${other.name}`);
      }
    });
    // Bars of problems, plumb lines and calipers: nothing may hide what a label is about.
    const marks = [...document.querySelectorAll<SVGPathElement>('.pin-mark:not(.hidden) .bar')];
    const drawn = [...document.querySelectorAll<SVGGeometryElement>('.op-engrave .hit, .op-cut-inner .hit')].map(
      (element) => ({ element, kind: 'letter or opening' }),
    );
    const solids = [...document.querySelectorAll<SVGGeometryElement>('.finish .solid')];
    const outlines = [...document.querySelectorAll<SVGGeometryElement>('.op-cut-outer .hit')];
    const inside = (element: SVGGeometryElement, x: number, y: number): boolean => {
      const frame = element.getBoundingClientRect();
      if (x < frame.left || x > frame.right || y < frame.top || y > frame.bottom) return false;
      const point = new DOMPoint(x, y).matrixTransform(element.getScreenCTM()!.inverse());
      return element.isPointInFill(point);
    };
    for (const { name, box } of labels) {
      const points: [number, number][] = [];
      const columns = Math.ceil(box.width / 5);
      const rows = Math.ceil(box.height / 5);
      for (let row = 0; row <= rows; row++) {
        for (let column = 0; column <= columns; column++) {
          points.push([box.left + (box.width * column) / columns, box.top + (box.height * row) / rows]);
        }
      }
      for (const { element, kind } of drawn) {
        if (points.some(([x, y]) => inside(element, x, y))) faults.push(`${name} lies on a ${kind}`);
      }
      for (const solid of [...solids, ...outlines]) {
        const hit = points.filter(([x, y]) => inside(solid, x, y)).length;
        if (hit > 0 && hit < points.length) faults.push(`${name} lies across an outline`);
        const piece = solid.closest('.piece')!;
        if (hit > 0 && lettering.includes(piece.getAttribute('data-piece')!)) faults.push(`${name} lies on a letter`);
      }
      for (const mark of marks) {
        const length = mark.getTotalLength();
        const matrix = mark.getScreenCTM()!;
        for (let at = 0; at <= length; at += 2) {
          const { x, y } = mark.getPointAtLength(at).matrixTransform(matrix);
          if (x > box.left && x < box.right && y > box.top && y < box.bottom) {
            faults.push(`${name} hides what a problem is about`);
            break;
          }
        }
      }
    }
    return { faults, figures: labels.map(({ name }) => name) };
  }, letteringPieces);
}

/** As the page says it, which also says whether it is an estimate. */
function cautionOf({ measures: { loads } }: SpecMessages): string {
  const { rule, caution } = loads[0]!;
  return caution === rule ? rule : `Strength is an estimate at best. ${rule}`;
}

/** A plate whose opening is so far from the middle of its top. */
const plateText = (right = 0, up = 0): string =>
  `tagwright: 1
units: mm
stock: {material: birch plywood, thickness: 3}
shapes:
  plate: {rectangle: [80, 45]}
pieces:
  tag: {body: plate, hanger: {hole: {at: top, nudge: {right: ${right}, up: ${up}}}}}
`;

describe('The preview’s page writes in the same places as when it was opened', () => {
  const preview = usePreview();
  const labels = () =>
    preview.page
      .locator('.dimension')
      .evaluateAll((all) => all.map((each) => `${each.textContent} ${each.querySelector('path')!.getAttribute('d')!}`));

  it('after something has been dragged about and put back', async () => {
    const own = await messagesOf(plateText());
    // What is below the drawing would change its height.
    const remembered = { kept: { dock: 'closed' }, cautions: [cautionOf(own)] };
    await preview.open({ pausesHeld: true, width: 540, height: 800, remembered }, own.scene);
    await preview.send(own.measures);
    await preview.elapse();
    const opened = await labels();
    const places = [
      [26, 0],
      [34, -20],
      [20, -36],
      [-20, -36],
      [-34, -20],
      [-30, 0],
    ] as const;
    for (const [nth, [right, up]] of places.entries()) {
      const there = await messagesOf(plateText(right, up), nth + 2);
      await preview.send(there.scene);
      await preview.send(there.measures);
      await preview.transform();
      const back = await messagesOf(plateText(), nth + 20);
      await preview.send(back.scene);
      await preview.send(back.measures);
      await preview.elapse();
      assert.deepEqual(await labels(), opened, `${right}, ${up}`);
    }
  });
});

describe('The preview’s page writes beside what it draws', function () {
  this.timeout(240_000);
  const preview = usePreview();
  let all: Specimen[];

  before(async () => {
    all = await specimens();
  });

  for (const size of sizes) {
    it(`on no opening, letter, pin or other label, and within sight: ${size.width} × ${size.height}`, async () => {
      await preview.open(size, all[0]!.messages.scene);
      const faults: string[] = [];
      for (const { name, messages } of all) {
        await preview.send(messages.scene);
        await preview.send(messages.measures);
        await preview.transform();
        const found = await judged(preview.page, letteringIn(messages));
        faults.push(...found.faults.map((fault) => `${name}: ${fault}`));
        // Both sizes and what holds the tie are always told; what is left out is the thinnest wall.
        const hangerCount = messages.scene.scene!.pieces.flatMap((piece) => piece.hangers).length;
        const figureIds = found.figures.filter((figure) => !/^pin|thinnest/.test(figure));
        if (figureIds.length < 2 + hangerCount) faults.push(`${name}: only ${figureIds.join(', ')} is told`);
      }
      assert.deepEqual(faults, []);
    });
  }
});
