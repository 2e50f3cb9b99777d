import assert from 'node:assert/strict';
import { Resvg } from '@resvg/resvg-js';
import { parseSvgDrawing } from '../../../src/tag/drawing/svg-drawing.ts';
import { assertNear, makeShape, newEngine } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertWorked, worked } from '../support/effort.ts';

function drawn(svg: string): Promise<Made> {
  return makeShape('{drawing: a.svg}', [], newEngine({ 'a.svg': svg }));
}

function problemOf(svg: string): string {
  const result = parseSvgDrawing(svg);
  return 'problem' in result ? result.problem : `none, but ${result.shapes.length} shapes`;
}

/** A drawing of 100 × 80 mm, a unit a millimetre. */
const page = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="100mm" height="80mm" viewBox="0 0 100 80">${inside}</svg>`;

const pixelsPerMm = 20;

/** Area in mm² and box in mm with y up, of what resvg, an independent renderer, inks. */
function inked(svg: string): { area: number; minX: number; maxX: number; minY: number; maxY: number } {
  const { width, height, pixels } = new Resvg(svg, { fitTo: { mode: 'width', value: 100 * pixelsPerMm } }).render();
  let [area, minX, maxX, minY, maxY] = [0, Infinity, -Infinity, Infinity, -Infinity];
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const alpha = pixels[4 * (y * width + x) + 3]! / 255;
      if (alpha === 0) continue;
      area += alpha / pixelsPerMm ** 2;
      if (alpha < 0.5) continue;
      [minX, maxX] = [Math.min(minX, x), Math.max(maxX, x + 1)];
      [minY, maxY] = [Math.min(minY, y), Math.max(maxY, y + 1)];
    }
  }
  const mm = (pixels: number): number => pixels / pixelsPerMm;
  return { area, minX: mm(minX), maxX: mm(maxX), minY: -mm(maxY), maxY: -mm(minY) };
}

describe('Drawings', () => {
  // Each filled black, so that what resvg inks is what is to be cut.
  for (const [what, inside] of [
    [
      'transforms in transforms',
      '<g transform="translate(30 20) rotate(30)"><rect transform="scale(2 .5)" x="-5" y="-9" width="18" height="22"/></g>',
    ],
    ['skewed and mirrored groups', '<g transform="matrix(1 .3 -.4 -1 50 60)"><path d="M0 0h20v10q10 10-20 20z"/></g>'],
    [
      'all basic shapes',
      '<rect x="2" y="3" width="20" height="14" rx="5"/><circle cx="40" cy="15" r="9"/><ellipse cx="70" cy="20" rx="15" ry="6"/><polygon points="5,40 25,40 15,70"/><polyline points="40 40, 60 40, 60 70, 40 60"/><line x1="0" y1="0" x2="90" y2="70"/>',
    ],
    ['a ring by the even-odd rule', '<path fill-rule="evenodd" d="M10 10h60v60h-60z M20 20h40v40h-40z"/>'],
    ['a ring by the non-zero rule', '<path d="M10 10h60v60h-60z M20 20v40h40v-40z"/>'],
    ['a square in a square by the non-zero rule', '<path d="M10 10h60v60h-60z M20 20h40v40h-40z"/>'],
    [
      'a rule said in a style, or by a group',
      '<path style="fill-rule: evenodd" d="M5 5h30v30h-30z M10 10h20v20h-20z"/><g fill-rule="evenodd"><path d="M45 5h30v30h-30z M50 10h20v20h-20z"/></g>',
    ],
    ['a star that crosses itself by the even-odd rule', '<path fill-rule="evenodd" d="M50 5 74 75 8 30H92L26 75Z"/>'],
    ['overlapping shapes that turn opposite ways', '<path d="M10 10h40v40h-40z"/><path d="M30 30v40h40v-40z"/>'],
    [
      'elements used again',
      '<defs><path id="leaf" d="M0 0q20-10 30 10q-20 8-30-10z"/></defs><use href="#leaf" x="10" y="20"/><use xlink:href="#leaf" transform="translate(50 50) rotate(-40)" y="5"/>',
    ],
    [
      'a group used again',
      '<g id="pair"><circle cx="10" cy="10" r="4"/><circle cx="22" cy="10" r="5"/></g><use href="#pair" x="30" y="30"/>',
    ],
    [
      'a symbol in a box',
      '<symbol id="sign" viewBox="0 0 20 10"><path d="M0 0h20v10z"/></symbol><use href="#sign" x="10" y="10" width="60" height="60"/>',
    ],
    [
      'a drawing in the drawing',
      '<svg x="20" y="10" width="40" height="40" viewBox="0 0 8 8"><rect width="8" height="6"/></svg>',
    ],
    [
      'units and shares',
      '<rect x="10%" y="25%" width="50%" height="20"/><rect x="1cm" y="60" width="2px" height="10"/>',
    ],
    [
      'what is hidden',
      '<rect width="9" height="9" display="none"/><rect width="9" height="9" style="display:none"/><g visibility="visible"><rect x="50" y="9" width="9" height="9"/></g>',
    ],
    [
      'names with a prefix',
      '<svg:g xmlns:svg="http://www.w3.org/2000/svg"><svg:rect x="9" y="9" width="30" height="12"/></svg:g>',
    ],
    ['links and switches', '<a href="https://example.org/"><rect x="9" y="9" width="30" height="12"/></a>'],
    [
      'clipped, patterned and written things',
      '<defs><rect width="90" height="70"/></defs><text x="9" y="60" fill="none">Rue</text><rect x="9" y="9" width="30" height="12"/>',
    ],
  ] as const) {
    it(`of ${what} are what resvg inks`, async () => {
      const made = await drawn(page(inside));
      const seen = inked(page(inside));
      assertNear(made.area, seen.area, 0.3, 'area');
      for (const side of ['minX', 'maxX', 'minY', 'maxY'] as const)
        assertNear(made.bounds[side], seen[side], 1.2 / pixelsPerMm, side);
    });
  }

  it('are as large as they say, by the tighter of width and height, and by CSS pixels where they say nothing', async () => {
    const rect = '<rect width="20" height="10"/>';
    for (const [head, width] of [
      ['width="60mm" height="40mm" viewBox="0 0 120 80"', 10],
      ['width="60mm" viewBox="0 0 120 80"', 10],
      ['height="40mm" viewBox="0 0 120 80"', 10],
      ['width="60mm" height="20mm" viewBox="0 0 120 80"', 5],
      ['width="6in" height="4in" viewBox="0 0 120 80"', 25.4],
      ['width="100%" height="100%" viewBox="0 0 120 80"', (20 * 25.4) / 96],
      ['width="300" height="200"', (20 * 25.4) / 96],
      ['', (20 * 25.4) / 96],
    ] as const)
      assertNear(
        (await drawn(`<svg xmlns="http://www.w3.org/2000/svg" ${head}>${rect}</svg>`)).width,
        width,
        1e-4,
        head,
      );
  });

  it('stay curves until they have their size, so that every size is equally smooth', async () => {
    const svg = page('<circle cx="50" cy="40" r="1"/>');
    const made = await makeShape('{drawing: a.svg, width: 80}', [], newEngine({ 'a.svg': svg }));
    assertNear(made.area, Math.PI * 40 ** 2, 0.002 * 2 * Math.PI * 40);
  });
});

describe('Damaged drawings', () => {
  const damaged = 'is damaged or cut short: save it again in your drawing program';
  const path = (data: string): string => page(`<path d="${data}"/>`);
  for (const [what, svg, problem] of [
    ['end inside a tag', page('<rect width="3" height="3"').slice(0, -6), damaged],
    ['end inside a value', '<svg width="1', damaged],
    ['have a path that does not begin', path('L0 0'), 'has a faulty path: it must start with M or m'],
    ['have a word in a path', path('M0 0L5 boo'), 'has a faulty path: there is a bad number at character 8'],
    ['lack a number in a path', path('M0 0q'), 'has a faulty path: a number is missing at character 6'],
    ['have a letter no path has', path('M0 0X3'), 'has a faulty path: there is an unknown command at character 5'],
    [
      'bend an arc by a 5',
      path('M0 0A3 3 0 5 1 9 9'),
      'has a faulty path: the flag of an arc at character 12 must be 0 or 1',
    ],
  ] as const) {
    it(`that ${what} say so in plain words`, () => {
      assert.equal(problemOf(svg), problem);
    });
  }
});

describe('Drawings made to do harm', () => {
  const doubling = (depth: number): string =>
    Array.from({ length: depth }, (_, i) => `<g id="g${i + 1}"><use href="#g${i}"/><use href="#g${i}"/></g>`).join('');
  const head = '<svg xmlns="http://www.w3.org/2000/svg">';

  for (const [what, svg, problem] of [
    [
      'use that doubles and doubles',
      `${head}<rect id="g0" width="1" height="1"/>${doubling(60)}</svg>`,
      /^has more than/,
    ],
    ['use that doubles nothing', `${head}<g id="g0"/>${doubling(60)}</svg>`, /^has more than 50000 elements$/],
    ['use of itself', `${head}<g id="a"><use href="#a"/></g></svg>`, /^is nested more than 100 deep$/],
    [
      'use of one another',
      `${head}<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g></svg>`,
      /^is nested more/,
    ],
    ['groups in groups', `${head}${'<g>'.repeat(5000)}${'</g>'.repeat(5000)}</svg>`, /nested|depth/i],
    [
      'a long path used often',
      `${head}<path id="p" d="M0 0${'l1 1'.repeat(20_000)}"/>${'<use href="#p"/>'.repeat(4000)}</svg>`,
      /^has more than 200000 lines and curves$/,
    ],
    [
      'entities in entities',
      `<!DOCTYPE svg [<!ENTITY a "${'x'.repeat(50)}"><!ENTITY b "&a;&a;&a;&a;">]>${head}<text>&b;</text></svg>`,
      /./,
    ],
    [
      'another file',
      `${head}<use href="other.svg#a"/><image href="https://example.org/a.png"/></svg>`,
      /^has no paths or shapes$/,
    ],
    [
      'scripts',
      `${head}<script>globalThis.harmed = true</script><style>@import url(https://example.org/a.css)</style></svg>`,
      /^has no paths or shapes$/,
    ],
    [
      'names of JavaScript’s own',
      `${head}<g id="__proto__"><__proto__ polluted="1"/></g><use href="#__proto__"/></svg>`,
      /./,
    ],
    ['numbers beyond reason', `${head}<rect width="1e999" height="3"/><path d="M0 0H1e308V1e308H-1e308z"/></svg>`, /./],
    [
      'a transform that is none',
      `${head}<g transform="rotate(a) scale(0) matrix(1)"><rect width="3" height="3" transform="frobnicate(2)"/></g></svg>`,
      /./,
    ],
    ['too much text', `${head}${' '.repeat(2_000_001)}</svg>`, /^is larger than two million characters$/],
  ] as const) {
    it(`by ${what} are refused, or harmless, at once`, async () => {
      const start = worked();
      assert.match(problemOf(svg), problem);
      assertWorked(start, 6);
      // The whole engine answers too, with issues and not with an exception.
      await newEngine({ 'a.svg': svg }).compute(
        'tagwright: 1\nshapes: {a: {drawing: a.svg}}\npieces: {t: {body: [a]}}',
        {
          locate: (name) => `/specs/${name}`,
        },
      );
      assertWorked(start, 6);
      assert.equal(({} as { polluted?: unknown }).polluted, undefined);
      assert.equal((globalThis as { harmed?: unknown }).harmed, undefined);
    });
  }
});
