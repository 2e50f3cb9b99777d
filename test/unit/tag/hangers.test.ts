import assert from 'node:assert/strict';
import { difference, intersection, offset } from '../../../src/geometry/clipper.ts';
import { EdgeIndex } from '../../../src/geometry/edge-index.ts';
import { area, boundsOf, centroid } from '../../../src/geometry/measure.ts';
import { partsOf } from '../../../src/geometry/parts.ts';
import { packagedFont } from '../../fonts/font-files.ts';
import { assertNear, make, newEngine, report, specOf } from '../support/engine.ts';
import { distance } from '../support/distance.ts';

const exact = 1e-4;

async function madeWithHanger(body: string, hanger: string, head: readonly string[] = []) {
  const made = await make(specOf([`body: ${body}`], `body: [body], hanger: {${hanger}}`, head));
  const piece = made.pieces[0]!;
  const [only] = piece.hangers;
  assert.ok(only);
  return { ...made, piece, hanger: only };
}

describe('A ring', () => {
  const bodies = [
    ['a plate', '{rectangle: [84, 40], radius: 6}'],
    ['a disc', '{ellipse: 40}'],
    ['a script name', '{text: Angelica, font: Pacifico, width: 92, grow: 0.5}'],
    ['a heavy letter', '{text: S, font: Alfa Slab One, height: 48}'],
  ] as const;
  for (const [what, body] of bodies) {
    for (const at of ['top', 'left', 'right', 'auto']) {
      it(`at ${at} of ${what} is joined, and its hole is clear`, async () => {
        const { piece, hanger, region } = await madeWithHanger(body, `ring: {at: ${at}, diameter: 3, wall: 2}`);
        assert.equal(partsOf(region).length, partsOf(piece.body).length, 'no part more than the body');
        assert.ok(area(intersection(hanger.lug!, piece.body)) > 0.5, 'the wall laps into the body');
        // It touches the outline: at most a few hundredths of a millimetre of arcs lie within the hole.
        assert.ok(area(intersection(hanger.opening, piece.body)) < 0.05, 'the hole is clear of the body');
        assertNear(area(hanger.opening), Math.PI * 2.25, 0.02);
        // Beside a letter, a slit too narrow to be cut belongs to the lug.
        assertNear(area(hanger.lug!), Math.PI * 3.5 ** 2, what === 'a script name' ? 0.3 : 0.05);
        assert.deepEqual(intersection(region, hanger.opening), []);
      });
    }
  }

  for (const [at, direction] of [
    ['top', { x: 0, y: 1 }],
    ['bottom', { x: 0, y: -1 }],
    ['left', { x: -1, y: 0 }],
    ['right', { x: 1, y: 0 }],
  ] as const) {
    it(`at ${at} lies on that side and is seen from outside`, async () => {
      for (const body of ['{text: Fennel, font: Pacifico, width: 80, grow: 0.4}', '{rectangle: [60, 30], radius: 4}']) {
        const { piece, hanger } = await madeWithHanger(body, `ring: {at: ${at}}`);
        const middle = centroid(piece.body)!;
        const out = { x: hanger.centre.x - middle.x, y: hanger.centre.y - middle.y };
        const along = out.x * direction.x + out.y * direction.y;
        const aside = Math.abs(out.x * direction.y - out.y * direction.x);
        assert.ok(along > aside, `${body}: the centre is off by (${out.x.toFixed(1)}, ${out.y.toFixed(1)})`);
        assert.equal(new EdgeIndex(piece.body).crossedBy(hanger.centre, direction), false);
      }
    });
  }

  for (const body of [
    '{rectangle: [84, 40], radius: 6}',
    '{ellipse: [70, 30]}',
    '{ellipse: 33}',
    '{polygon: {sides: 6, across: 50}}',
  ]) {
    it(`at the top of a symmetric plate is centred: ${body}`, async () => {
      const { hanger } = await madeWithHanger(body, 'ring: {at: top}');
      assertNear(hanger.centre.x, 0, 0.05);
    });
  }

  it('has what the tie needs where nothing is said (rule of thumb, no source)', async () => {
    const plain = await madeWithHanger('{ellipse: 40}', 'ring: {at: top}');
    assertNear(plain.hanger.openingSize, 2.8, exact);
    const twine = await madeWithHanger('{ellipse: 40}', 'ring: {at: top}', ['tie: {twine: 3 mm}']);
    assertNear(twine.hanger.openingSize, 6, exact);
    const bounds = boundsOf(twine.hanger.lug!)!;
    // Wall: 1.78 mm at least.
    assertNear(bounds.maxX - bounds.minX, 6 + 2 * 1.78, 0.01);
  });

  it('keeps its wall: no point of the lug is nearer to the hole, also when sunk', async () => {
    for (const sink of ['0', '1']) {
      const { hanger, region } = await madeWithHanger(
        '{rectangle: [60, 30]}',
        `ring: {at: top, diameter: 4, wall: 2, sink: ${sink}}`,
      );
      // The rim at the far side: wall 2 between two circles round one centre.
      const free = difference(hanger.lug!, [hanger.opening]);
      assertNear(area(free), Math.PI * (16 - 4), 0.05);
      assertNear(boundsOf(region)!.maxY - hanger.centre.y, 4, 0.005);
    }
  });

  it('sunk by a millimetre lies a millimetre deeper', async () => {
    const at = async (sink: number) =>
      (await madeWithHanger('{rectangle: [60, 30]}', `ring: {at: top, diameter: 4, sink: ${sink}}`)).hanger.centre.y;
    assertNear(await at(0), 15 + 2, 0.02);
    assertNear((await at(0)) - (await at(1)), 1, 0.02);
  });

  it('at a point is there, and a nudge moves it', async () => {
    const { hanger } = await madeWithHanger(
      '{rectangle: [60, 30]}',
      'ring: {at: {up: 16, right: 5}, nudge: {left: 1}}',
    );
    assertNear(hanger.centre.x, 4, exact);
    assertNear(hanger.centre.y, 16, exact);
  });

  it('round an eccentric hole leaves R − r − e of material', async () => {
    // A disc R = 10 with a hole r = 3 drawn 4 off its centre: 3 mm at the thinnest.
    const { region, hanger } = await madeWithHanger('{ellipse: 20}', 'hole: {at: {up: 4}, diameter: 6}');
    const [outer] = region;
    assertNear(distance([outer!], hanger.opening), 10 - 3 - 4, 0.005);
  });
});

describe('A ring on a frame with a letter in it', () => {
  it('stands in the middle of the frame, whatever the letter, and is not read with its accent', async () => {
    for (const letter of ['A', 'J', 'Å', 'É', 'Ö']) {
      const shapes = [
        'outer: {circle: 60}',
        'rim: {difference: [outer, {from: outer, grow: -4}]}',
        `letter: {text: ${letter}, font: Alfa Slab One, overlap: auto, fit: {in: outer, margin: 1.7}}`,
      ];
      const { pieces } = await make(specOf(shapes, 'body: [rim, letter], hanger: {ring: {on: rim, at: top}}'));
      const [ring] = pieces[0]!.hangers;
      assertNear(ring!.centre.x, 0, 0.01, letter);
      assert.deepEqual(ring!.readAs ?? [], [], letter);
    }
  });
});

describe('A ring at the end of a narrow bar', () => {
  const ringOf = async (width: number, at: string) => {
    const bar = `bar: {rectangle: [${width}, 20], nudge: {up: 20}}`;
    const spec = specOf(['plate: {rectangle: [40, 20]}', bar], `body: [plate, bar], hanger: {ring: {at: ${at}}}`);
    return (await make(spec)).pieces[0]!.hangers[0]!;
  };

  it('stands over its middle, where the tag hangs straight', async () => {
    for (const width of [2, 2.6]) {
      for (const at of ['auto', 'top']) {
        const { centre, openingSize } = await ringOf(width, at);
        assertNear(centre.x, 0, 0.001);
        assertNear(centre.y, 30 + openingSize / 2, 0.02);
      }
    }
  });
});

describe('A hole', () => {
  for (const at of ['top', 'bottom', 'left', 'right', '30']) {
    it(`at ${at} is exactly its inset from the edge`, async () => {
      for (const body of ['{rectangle: [84, 40], radius: 6}', '{ellipse: [70, 40]}']) {
        const { piece, hanger } = await madeWithHanger(body, `hole: {at: ${at}, diameter: 4, inset: 3}`);
        assertNear(distance(piece.body, hanger.opening), 3, 0.01, body);
        assert.deepEqual(difference(hanger.opening, [offset(piece.body, -2.98)]), []);
        assertNear(piece.region.length, 2, 0);
      }
    });
  }

  it('takes its area off the body', async () => {
    const made = await madeWithHanger('{rectangle: [84, 40]}', 'hole: {at: top, diameter: 4, inset: 3}');
    assertNear(made.area, 3360 - Math.PI * 4, 0.02);
    assertNear(made.hanger.centre.y, 20 - 3 - 2, 0.005);
    assertNear(made.hanger.centre.x, 0, 0.005);
  });

  it('has room in a scalloped plate as deep as the bays leave it', async () => {
    const { piece, hanger } = await madeWithHanger(
      '{scallops: {across: 55, lobes: 12}}',
      'hole: {at: top, diameter: 4, inset: 4.5}',
    );
    assertNear(distance(piece.body, hanger.opening), 4.5, 0.01);
    assertNear(hanger.centre.x, 0, 0.01);
  });

  for (const kind of ['hole: {diameter: 4, at: left}', 'slot: {length: 10, width: 4, at: left}'])
    it(`of no stated inset is nearer to the edges of a narrow bar: ${kind}`, async () => {
      // 1.5 mm are needed round an opening; half as much again is left where there is room (our own judgement).
      const { piece, hanger } = await madeWithHanger(
        `{rectangle: [70, ${kind.startsWith('hole') ? 7.5 : 13.5}]}`,
        kind,
      );
      const left = distance(piece.body, hanger.opening);
      assert.ok(left > 1.5 && left < 1.8, String(left));
    });

  it('is said to have no room where it has none', async () => {
    const text = specOf(['body: {rectangle: [20, 6]}'], 'body: [body], hanger: {hole: {diameter: 4, inset: 3}}');
    const { issues, source } = await report(text);
    const found = issues.find((issue) => issue.code === 'empty-shape');
    assert.ok(found);
    assert.equal(source.position(found.range.start).line, 5);
  });
});

describe('A slot', () => {
  it('lies across the direction in which the tag hangs', async () => {
    for (const [at, width, height] of [
      ['top', 11, 3],
      ['bottom', 11, 3],
      ['left', 3, 11],
      ['right', 3, 11],
    ] as const) {
      const { hanger, piece } = await madeWithHanger('{rectangle: [84, 60]}', `slot: {at: ${at}, inset: 4}`, [
        'tie: {ribbon: 10 mm}',
      ]);
      const bounds = boundsOf(hanger.opening)!;
      assertNear(bounds.maxX - bounds.minX, width, 0.005, at);
      assertNear(bounds.maxY - bounds.minY, height, 0.005, at);
      assertNear(distance(piece.body, hanger.opening), 4, 0.01);
      // Round ends: a·b − (4 − π)r².
      assertNear(area(hanger.opening), 33 - (4 - Math.PI) * 2.25, 0.02);
    }
  });
});

describe('A slot where the edge slopes or curves', () => {
  for (const [what, shape, at] of [
    ['a round plate', '{circle: 60}', 'left'],
    ['a round plate', '{circle: 60}', 'top'],
    ['a gable', '{house: [60, 70]}', 'top'],
    ['the end of a label', '{label: [80, 40]}', 'left'],
    ['an oval', '{ellipse: [80, 46]}', 'left'],
  ] as const) {
    it(`keeps its inset from ${what} at its ends too, and lies no further in (${at})`, async () => {
      const { hanger, piece } = await madeWithHanger(shape, `slot: {length: 14, width: 4, inset: 3, at: ${at}}`);
      assertNear(distance(piece.body, hanger.opening), 3, 0.02);
    });
  }

  it('lies below the dip of a heart, with the same material there', async () => {
    const { hanger, piece } = await madeWithHanger('{heart: 60}', 'slot: {length: 14, width: 4, inset: 3, at: top}');
    assert.ok(distance(piece.body, hanger.opening) > 2.98);
  });
});

describe('Hangers', () => {
  const shapes = ['plate: {rectangle: [80, 30]}', 'other: {ellipse: [60, 40]}'];

  it('may be two, between which the piece hangs level', async () => {
    const made = await make(
      specOf(shapes, 'body: [plate], hanger: [{hole: {at: top-left, diameter: 4}}, {ring: {at: right, diameter: 4}}]'),
    );
    const [hole, ring] = made.pieces[0]!.hangers;
    assert.equal(made.pieces[0]!.hangers.length, 2);
    // Exact: 40 and 15 less the inset of one and a half min_web, 2.25 mm, and the radius of 2 mm.
    assertNear(hole!.centre.x, -35.75, 0.01);
    assertNear(hole!.centre.y, 10.75, 0.01);
    assert.ok(ring!.centre.x > 40);
    assert.deepEqual(hole!.path, ['pieces', 'tag', 'hanger', 0, 'hole']);
    assert.equal(made.region.length, 3, 'an outline and two holes');
    // One is 10 mm above the other.
    assert.deepEqual(
      made.issues.map(({ code }) => code),
      ['hangs-askew'],
    );
  });

  it('of which one is too weak are told at that one', async () => {
    const piece = 'body: [plate], hanger: [{hole: {at: left, inset: 4}}, {hole: {at: right, inset: 0.5}}]';
    const { issues } = await make(specOf(shapes, piece));
    assert.deepEqual(
      issues.map(({ code, path }) => [code, path]),
      [['hole-near-edge', ['pieces', 'tag', 'hanger', 1, 'hole']]],
    );
  });

  it('may be defined once and hang several pieces', async () => {
    const text = [
      'tagwright: 1',
      'hangers: {side: {ring: {at: left, diameter: 3}}}',
      'shapes:',
      ...shapes.map((shape) => `  ${shape}`),
      'pieces:',
      '  a: {body: [plate], hanger: side}',
      '  b: {body: [other], hanger: [side, {hole: {at: right}}]}',
      '',
    ].join('\n');
    const { pieces, issues } = await make(text);
    assert.deepEqual(issues, []);
    assert.deepEqual(
      pieces.map(({ hangers }) => hangers.map(({ kind, path }) => [kind, path[0]])),
      [
        [['ring', 'hangers']],
        [
          ['ring', 'hangers'],
          ['hole', 'pieces'],
        ],
      ],
    );
    const misspelt = await report(text.replace('hanger: side', 'hanger: sidde'));
    assert.deepEqual(
      misspelt.issues.map(({ code, suggestions }) => [code, suggestions]),
      [['unknown-hanger', ['side']]],
    );
  });

  it('that nothing uses are read all the same, and more than two are too many', async () => {
    const unused = await report(specOf(shapes, 'body: [plate]', ['hangers: {side: {ring: {diameter: -3}}}']));
    assert.deepEqual(
      unused.issues.map(({ code, path }) => [code, path]),
      [['bad-length', ['hangers', 'side', 'ring', 'diameter']]],
    );
    const three = await report(specOf(shapes, 'body: [plate], hanger: [{hole: {}}, {hole: {}}, {hole: {}}]'));
    assert.ok(three.issues.some(({ code }) => code === 'bad-value'));
  });
});

describe('Holes in two corners of one side', () => {
  const shapes: readonly (readonly [name: string, shape: string])[] = [
    ['arrow', '{arrow: {length: 120, width: 40}}'],
    ['notched arrow', '{arrow: {length: 120, width: 40, shaft: 26, tail: notched, notch: 9}}'],
    ['label', '{label: {size: [90, 40], end: left}}'],
    ['ticket', '{ticket: {size: [80, 40], bite: 6}}'],
    ['rectangle', '{rectangle: [80, 40], radius: 8}'],
    ['house', '{house: [50, 70]}'],
    ['slanting polygon', '{polygon: {points: [[0, 0], [90, 20], [90, 60], [0, 60]]}}'],
  ];
  for (const [name, shape] of shapes)
    for (const side of ['top', 'bottom'])
      it(`are level at the ${side} of: ${name}`, async () => {
        const hangers = `[{hole: {at: ${side}-left, diameter: 4}}, {hole: {at: ${side}-right, diameter: 4}}]`;
        const { pieces, issues } = await make(specOf([`plate: ${shape}`], `body: [plate], hanger: ${hangers}`));
        const [left, right] = pieces[0]!.hangers.map(({ centre }) => centre);
        assertNear(left!.y, right!.y, 1e-6, 'level');
        assert.ok(left!.x < right!.x - 20, 'they are apart');
        assert.deepEqual(
          issues.filter(({ message }) => /off level|near the edge|hole/i.test(message)).map(({ message }) => message),
          [],
        );
        // As far from the edge as one hole would be, at the least.
        const one = `body: [plate], hanger: {hole: {at: ${side}-left, diameter: 4}}`;
        const alone = (await make(specOf([`plate: ${shape}`], one))).pieces[0]!;
        const least = distance(alone.body, alone.hangers[0]!.opening);
        for (const { opening } of pieces[0]!.hangers)
          assert.ok(distance(pieces[0]!.body, opening) >= least - 1e-3, `${least} mm to the edge of one alone`);
      });

  for (const [kind, keys, off] of [
    ['slot', 'length: 8', 1e-6],
    ['keyhole', 'width: 2', 1e-6],
    ['ring', 'diameter: 3', 0.1],
  ] as const)
    for (const [name, shape] of shapes)
      it(`are level where they are ${kind}s: ${name}`, async () => {
        const hangers = `[{${kind}: {at: top-left, ${keys}}}, {${kind}: {at: top-right, ${keys}}}]`;
        const { pieces, issues } = await make(specOf([`plate: ${shape}`], `body: [plate], hanger: ${hangers}`));
        const [left, right] = pieces[0]!.hangers.map(({ centre }) => centre);
        assertNear(left!.y, right!.y, off, 'level');
        assert.ok(left!.x < right!.x - 15, 'they are apart');
        assert.deepEqual(
          issues.filter(({ code }) => /hang|hole/.test(code)).map(({ message }) => message),
          [],
        );
      });

  it('are not made level by a ring that would cover the dot of an i', async () => {
    const name = 'name: {text: Lilli, font: Pacifico, x_height: 14, overlap: auto}';
    const { issues } = await make(specOf([name], 'body: [name], hanger: [{ring: top-left}, {ring: top-right}]'));
    assert.ok(!issues.some(({ code }) => code === 'hole-blocked'), issues.map(({ message }) => message).join());
  });

  it('stay where they are told to be, and where only one is in a corner', async () => {
    const arrow = 'plate: {arrow: {length: 120, width: 40}}';
    const at = async (hangers: string) =>
      (await make(specOf([arrow], `body: [plate], hanger: ${hangers}`))).pieces[0]!.hangers.map(
        ({ centre }) => centre.y,
      );
    const [alone] = await at('{hole: {at: top-right, diameter: 4}}');
    const nudged = await at(
      '[{hole: {at: top-left, diameter: 4}}, {hole: {at: top-right, diameter: 4, nudge: {up: 0.5}}}]',
    );
    assertNear(nudged[1]!, alone! + 0.5, 1e-6);
    const others = await at('[{hole: {at: left, diameter: 4}}, {hole: {at: top-right, diameter: 4}}]');
    assertNear(others[1]!, alone!, 1e-6);
  });
});

describe('A ring at the top of a name', () => {
  const named = (text: string) =>
    madeWithHanger(`{text: ${text}, font: Pacifico, x_height: 11, overlap: auto, grow: 0.4}`, 'ring: {at: top}', [
      'stock: {thickness: 3}',
      'tie: {twine: 2}',
    ]);

  it('stands on a neck where nothing reaches up near the balance, clear of the letters and in one part with them', async () => {
    const { piece, hanger, region, issues } = await named('Geese');
    const { x, y } = hanger.centre;
    const balance = centroid(piece.body)!;
    assert.ok(Math.abs(Math.atan2(x - balance.x, y - balance.y)) < (6 * Math.PI) / 180, 'it hangs level');
    const disc = offset(hanger.opening, hanger.wall!);
    assert.deepEqual(intersection(disc, piece.body), []);
    assert.equal(partsOf(region).length, 1);
    // As wide as the wall, from the ring down.
    const neck = boundsOf(difference(hanger.lug!, [offset(disc, 0.05)]))!;
    assertNear(neck.maxX - neck.minX, hanger.wall!, 0.05);
    assert.ok(intersection(piece.body, hanger.lug!).length > 0);
    assert.deepEqual(
      issues.filter(({ code }) => ['hangs-askew', 'hanger-weak', 'hole-blocked'].includes(code)),
      [],
    );
  });

  it('has its neck in the middle of a bowl: further to the side the “c” would be a “d”', async () => {
    const engine = newEngine({ 'serif.woff': new Uint8Array(await packagedFont('source-serif-4', 'latin', 700)) });
    const name = `name: {text: "Bärlauch 'Früh'", font: serif.woff, width: 115 mm, overlap: auto}`;
    const head = ['stock: {thickness: 3}', 'tie: {twine: 2}'];
    const made = await make(specOf([name], 'body: [name], hanger: {ring: {on: name, at: top}}', head), engine);
    const [hanger] = made.pieces[0]!.hangers;
    const { letters } = [...made.report.tag!.made.values()].find(({ lettering }) => lettering)!.lettering![0]!;
    const { x } = hanger!.centre;
    const letter = letters.map(({ region }) => boundsOf(region)!).find(({ minX, maxX }) => minX < x && maxX > x)!;
    const share = (x + hanger!.wall! / 2 - letter.minX) / (letter.maxX - letter.minX);
    assert.ok(share < 0.76, `its side is at ${share} of the letter`);
  });

  it('needs none on a letter that reaches up, nor on the dot of an “i” near the balance', async () => {
    for (const name of ['Leo', 'Dill']) {
      const { piece, hanger, issues } = await named(name);
      assert.ok(intersection(hanger.lug!, piece.body).length > 0);
      assert.equal(difference(hanger.lug!, [offset(hanger.opening, hanger.wall! + 0.05)]).length, 0, name);
      assert.deepEqual(
        issues.filter(({ code }) => code === 'hangs-askew' || code === 'hole-blocked'),
        [],
        name,
      );
    }
  });
});

describe('A hanger in the center', () => {
  it('is in the middle of what it is set into, as its point is', async () => {
    const made = (at: string) =>
      make(
        specOf(
          ['lid: {rectangle: [34, 12], nudge: {up: 20}}', 'jar: {ellipse: [50, 40]}'],
          `body: [lid, jar], hanger: {hole: {on: lid, at: ${at}}}`,
        ),
      );
    const [word, point] = [await made('center'), await made('{up: 0 mm}')];
    assert.deepEqual(word.pieces[0]!.hangers[0]!.centre, point.pieces[0]!.hangers[0]!.centre);
  });

  it('is no ring, nor a row', async () => {
    const messages = async (hanger: string) =>
      (await report(specOf(['disc: {ellipse: 40}'], `body: [disc], hanger: {${hanger}}`))).issues.map(
        ({ message }) => message,
      );
    assert.deepEqual(await messages('ring: center'), ['A ring stands at an edge: name a side, or “auto”.']);
    assert.deepEqual(await messages('hole: {at: center, count: 2}'), [
      'A row goes along a side: use “top”, “bottom”, “left” or “right”.',
    ]);
  });
});

describe('A tag on a split ring', () => {
  const plate = (tie: string, hole: string) =>
    make(specOf(['plate: {rectangle: [60, 40]}'], `body: [plate], hanger: {hole: ${hole}}`, [`tie: {${tie}}`]));

  it('has a hole for both of its turns, 4 mm for 25 mm (common practice, no source), and is told of one too small', async () => {
    const made = await plate('split_ring: 25 mm', 'top');
    assert.equal(made.pieces[0]!.hangers[0]!.openingSize, 4);
    assert.deepEqual(made.issues, []);
    assert.equal((await plate('split_ring: 12 mm', 'top')).pieces[0]!.hangers[0]!.openingSize, 2.8);
    assert.equal((await plate('split_ring: 25 mm, opening: 5 mm', 'top')).pieces[0]!.hangers[0]!.openingSize, 5);
    const messages = async (size: string) =>
      (await plate('split_ring: 25 mm', `{at: top, diameter: ${size}}`)).issues.map(({ message }) => message);
    assert.deepEqual(await messages('3 mm'), []);
    assert.deepEqual(await messages('2.8 mm'), ['The hole is 2.80 mm; a 25.00 mm split ring needs 3.00 mm.']);
  });

  it('is asked about where the ring is larger than any, and where twine was written', async () => {
    const odd = async (tie: string) =>
      (await plate(tie, '{at: top, diameter: 4 mm}')).issues
        .filter(({ code }) => code === 'odd-value')
        .map(({ message }) => message);
    assert.deepEqual(await odd('split_ring: 61 mm'), [
      'The split ring is 61.00 mm across; tags hang on split rings of up to 60 mm.',
    ]);
    assert.match((await odd('twine: 20 mm')).join(), /For a split ring, say “split_ring”/);
  });
});
