import assert from 'node:assert/strict';
import { findFixes, withEdits } from '../../../src/fixes/find-fixes.ts';
import { area } from '../../../src/geometry/measure.ts';
import { parseStyleSheet, propertiesOf } from '../../../src/tag/drawing/svg-style.ts';
import { assertSilent, found, only } from '../checks/found.ts';
import { assertNear, make, newEngine, placeOf, report, specOf } from '../support/engine.ts';
import type { Made } from '../support/engine.ts';
import { assertWorked, worked } from '../support/effort.ts';

const disc = '<circle cx="50" cy="40" r="20"/>';

/** A drawing of 100 × 80 mm, a unit a millimetre, with a filled disc and something else. */
const page = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="80mm" viewBox="0 0 100 80">${disc}${inside}</svg>`;

function drawn(inside: string, svg = page(inside)): Promise<Made> {
  const text = `tagwright: 1
shapes:
  leaf: {drawing: leaf.svg}
pieces:
  tag: {body: [leaf], parts: many}
`;
  return make(text, newEngine({ 'leaf.svg': svg }));
}

const discArea = Math.PI * 400;

/** In mm²: the circle becomes a polygon within two thousandths of a millimetre of it, along 126 mm. */
const flattened = 0.252;

describe('What of a drawing is left out', () => {
  for (const [name, inside, description] of [
    ['a line', '<line x1="0" y1="0" x2="10" y2="10" stroke="black"/>', '1 line without a fill'],
    ['a straight path', '<path d="M0 0H10" stroke="black"/>', '1 line without a fill'],
    ['an open curve', '<path d="M0 0C10 0 20 10 20 20" fill="none" stroke="black"/>', '1 line without a fill'],
    ['an open polyline', '<polyline points="0 0 10 0 10 10" style="fill:none;stroke:#000"/>', '1 line without a fill'],
    [
      'lines whose paint comes from a group',
      '<g fill="none" stroke="black"><path d="M0 0H10V9"/><path d="M0 5H10V14"/></g>',
      '2 lines without a fill',
    ],
    [
      'lines whose paint comes from a style sheet',
      '<style>/* {x} */ .a,.b{fill:none;stroke:#000}</style><path class="c b" d="M0 0H10V9"/>',
      '1 line without a fill',
    ],
    ['text', '<text x="1" y="9">Rue <tspan>1</tspan></text>', '1 text'],
    ['a picture', '<image href="a.png" width="9" height="9"/>', '1 picture'],
    [
      'a clipping path',
      '<clipPath id="c"><rect width="50" height="80"/></clipPath><g clip-path="url(#c)"><rect width="5" height="5"/></g>',
      '1 clipping path',
    ],
    [
      'a mask',
      '<mask id="m"><rect width="9" height="9"/></mask><rect width="5" height="5" style="mask:url(#m)"/>',
      '1 mask',
    ],
    [
      'a pattern',
      '<pattern id="p"><rect width="1" height="1"/></pattern><rect width="5" height="5" fill="url(#p)"/>',
      '1 pattern',
    ],
    ['a filter', '<rect width="5" height="5" filter="url(#f)"/>', '1 filter'],
    [
      'a thick stroke round a filled shape',
      '<rect width="9" height="9" stroke="black" stroke-width="2"/>',
      '1 thick stroke',
    ],
    [
      'a thick outline',
      '<g transform="scale(2)"><circle cx="9" cy="9" r="4" fill="none" stroke="black" stroke-width="0.6"/></g>',
      '1 thick stroke',
    ],
    ['arrow heads', '<path d="M0 0H9V9H0Z" marker-end="url(#a)"/>', '1 marker on a line'],
    [
      'a copy of nothing',
      '<use href="#nobody"/><use href="other.svg#leaf"/>',
      '2 copies of something that is not in the file',
    ],
  ] as const) {
    it(`is told of ${name}`, async () => {
      const made = await drawn(inside);
      const issue = only(made, 'not-drawn');
      assert.equal(issue.severity, 'warning');
      const verb = description.startsWith('1 ') ? 'is' : 'are';
      assert.equal(issue.message, `${description} in “leaf.svg” ${verb} left out: only filled shapes are used.`);
      assert.equal(placeOf(made.report, issue).text, 'leaf.svg');
    });
  }

  it('is told in one sentence, and white shapes in another', async () => {
    const inside =
      '<text>a</text><text>b</text><line x2="9" stroke="red"/><image href="a.png"/><rect width="3" height="3" fill="#FFF"/>';
    assert.equal(
      only(await drawn(inside), 'not-drawn').message,
      '1 line without a fill, 2 texts and 1 picture in “leaf.svg” are left out: only filled shapes are used. 1 white shape in “leaf.svg” counts as filled: colours are ignored.',
    );
  });

  it('is an info where an outline without a fill is made solid among filled shapes', async () => {
    const ring = '<circle cx="9" cy="9" r="5" fill="none" stroke="black" stroke-width="0.5"/>';
    const issue = only(await drawn(ring), 'not-drawn');
    assert.equal(issue.severity, 'info');
    assert.equal(
      issue.message,
      '1 outline with a stroke but no fill in “leaf.svg” is made solid, like the filled shapes beside it. For a ring, turn the stroke into an outline in your drawing program.',
    );
    assert.match(only(await drawn(ring + ring), 'not-drawn').message, /^2 outlines .* are made solid/);
    assertSilent(await drawn('', page(ring).replace(disc, '')), 'not-drawn');
  });

  it('does not matter where no piece uses the drawing', async () => {
    const svg = page('<line x1="0" y1="0" x2="10" y2="10" stroke="black"/>');
    const text = specOf(['leaf: {drawing: leaf.svg}', 'plate: {circle: 40}'], 'body: [plate]');
    assertSilent(await make(text, newEngine({ 'leaf.svg': svg })), 'not-drawn');
  });

  it('is told of each shape that uses the drawing', async () => {
    const text = `tagwright: 1
shapes:
  leaf: {drawing: leaf.svg}
  other: {drawing: leaf.svg, nudge: {right: 60}}
pieces:
  tag: {body: [leaf, other], parts: many}
`;
    const made = await make(text, newEngine({ 'leaf.svg': page('<text>a</text>') }));
    assert.equal(found(made, 'not-drawn').length, 2);
  });

  it('leaves no shape of itself: an open line is not filled from end to end', async () => {
    const made = await drawn('<path d="M0 0C10 0 20 10 20 20" fill="none" stroke="black"/>');
    assertNear(area(made.region), discArea, flattened);
  });

  it('makes a drawing that has nothing else useless, and says why', async () => {
    const svg = '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0H9V9" fill="none" stroke="red"/></svg>';
    await assert.rejects(
      drawn('', svg),
      /The drawing “leaf.svg” has only lines without a fill; only filled shapes are used unless “lines: true” keeps them as lines/,
    );
  });
});

describe('Nothing is left out', () => {
  for (const [name, inside, more] of [
    [
      'of outlines to be cut, which are filled',
      '<path d="M0 0H9V9H0Z" fill="none" stroke="red" stroke-width="0.1"/>',
      81,
    ],
    [
      'of an outline that ends where it began',
      '<path d="M0 0H9V9H0V0.005" fill="none" stroke="red" stroke-width="0.1"/>',
      81,
    ],
    ['of an open outline with a fill', '<path d="M0 0H9V9H0"/>', 81],
    [
      'of what is not seen',
      '<rect width="9" height="9" fill="none"/><text display="none">a</text><line x2="9"/><image visibility="hidden"/>',
      0,
    ],
    [
      'of what a style sheet hides',
      '<style>.h{display:none}</style><rect class="h" width="9" height="9"/><text class="h">a</text>',
      0,
    ],
    [
      'of a thin stroke, which only shows the outline',
      '<rect width="9" height="9" stroke="black" stroke-width="0.9"/>',
      81,
    ],
    [
      'of titles, colours and gradients',
      '<title>Leaf</title><linearGradient id="g"/><rect width="9" height="9" fill="url(#g)"/>',
      81,
    ],
    ['of clips that are none', '<rect width="9" height="9" clip-path="none" mask="none" filter="none"/>', 81],
  ] as const) {
    it(name, async () => {
      const made = await drawn(inside);
      assert.ok(found(made, 'not-drawn').every(({ severity }) => severity === 'info'));
      assertNear(area(made.region), discArea + more, flattened);
    });
  }

  it('of a thick stroke up to a hundredth of the drawing', async () => {
    const stroked = (width: number) => drawn(`<rect width="9" height="9" stroke="black" stroke-width="${width}"/>`);
    assertSilent(await stroked(0.99), 'not-drawn');
    only(await stroked(1.01), 'not-drawn');
  });

  it('of white shapes alone: that is only the colour it was drawn in', async () => {
    assertSilent(await drawn('', page('').replaceAll('<circle', '<circle fill="white"')), 'not-drawn');
  });
});

describe('Style sheets of drawings', () => {
  // CSS 2.1, chapter 6: the style attribute before the sheet, ids before classes before elements, later before earlier, and
  // all of them before presentation attributes (SVG 1.1, 6.4).
  it('are cascaded as CSS and SVG have it', () => {
    const sheet = parseStyleSheet(
      'path{fill:a;stroke:s} .x{fill:b} .x{fill:c} #i{fill:d} svg .x{fill:no} /* .x{fill:no} */ .y{fill:e',
    );
    const fill = (attributes: Record<string, string>) =>
      propertiesOf('path', { fill: 'attribute', ...attributes }, sheet)('fill');
    assert.equal(fill({}), 'a');
    assert.equal(fill({ class: 'x' }), 'c');
    assert.equal(fill({ class: 'x', id: 'i' }), 'd');
    assert.equal(fill({ class: 'x', id: 'i', style: 'fill: f !important' }), 'f');
    assert.equal(propertiesOf('rect', { fill: 'attribute' }, sheet)('fill'), 'attribute');
    assert.equal(propertiesOf('rect', {}, sheet)('fill'), undefined);
  });

  it('as large as a file may be are read at once', () => {
    const started = worked();
    parseStyleSheet('a'.repeat(2_000_000));
    parseStyleSheet('/*'.repeat(1_000_000));
    parseStyleSheet('{'.repeat(2_000_000));
    assertWorked(started, 4);
  });
});

describe('A path', () => {
  const leaf = 'M0 0 C6 -10 18 -10 26 0 C18 10 6 10 0 0 Z';
  const notDrawn = async (data: string, more = '') => {
    const { issues } = await report(
      specOf([`leaf: {path: "${data}"${more}}`], 'body: [{rectangle: [60, 40]}], score: [leaf]'),
    );
    return issues.filter(({ code }) => code === 'not-drawn').map(({ message }) => message);
  };

  it('says which of its lines enclose nothing and are left out', async () => {
    assert.deepEqual(await notDrawn(`${leaf} M0 0 L26 0`), [
      '1 line of this path is left out: it encloses nothing. Another path with “lines: true” beside it draws it.',
    ]);
    assert.match(
      (await notDrawn(`${leaf} M0 0 L26 0 M9 -5 L12 0 L9 -5`))[0]!,
      /^2 lines of this path are left out: they/,
    );
  });

  it('says nothing where all of it is drawn', async () => {
    assert.deepEqual(await notDrawn(leaf), []);
    assert.deepEqual(await notDrawn(`${leaf} M0 0 L26 0`, ', lines: true'), []);
    assert.deepEqual(await notDrawn('M0 0 L20 0 L20 12'), []);
  });

  it('says once where none of it is drawn, and is made lines by a fix', async () => {
    const engine = newEngine();
    const options = { locate: () => undefined };
    const text = specOf(
      ['leaf: {path: "M0 0 L26 0 M9 -5 L12 0", width: 26}'],
      'body: [{rectangle: [60, 40]}], score: [leaf]',
    );
    const made = await engine.compute(text, options);
    assert.deepEqual(
      made.issues.map(({ code, message }) => [code, message]),
      [['empty-shape', 'This shape encloses nothing. To score or engrave along it, add “lines: true”.']],
    );
    const [fix] = await findFixes(engine, made, made.issues[0]!, options);
    const { issues } = await engine.compute(withEdits(text, fix!.edits), options);
    assert.deepEqual(issues, []);
  });
});
