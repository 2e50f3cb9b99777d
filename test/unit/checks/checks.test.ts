import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { make, newEngine, placeOf, report, specOf, assertNear } from '../support/engine.ts';
import { found, only } from './found.ts';
import type { IssueCode } from '../../../src/core/issue-kinds.ts';

const stock = 'stock: {min_web: 0.2 mm}';

describe('Parts that fall out', () => {
  it('are the dot of an i, marked on the dot', async () => {
    const made = await make(specOf(['body: {text: i, font: Nunito, height: 30}'], 'body: [body]', [stock]));
    const loose = only(made, 'loose-part');
    assert.equal(loose.severity, 'error');
    assert.equal(loose.piece, 'tag');
    assert.equal(placeOf(made.report, loose).line, 4);
    assert.ok(loose.points![0]!.y > made.bounds.minY + 20, 'the dot is at the top');
  });

  it('are called by their letters', async () => {
    const said = async (word: string, body = 'body: [word]') => {
      const shapes = ['plate: {rectangle: [80, 30]}', `word: {font: Nunito, weight: 800, height: 20, ${word}}`];
      return only(await make(specOf(shapes, body, [stock])), 'loose-part').message.replace(/(?: is| are) joined.*/, '');
    };
    assert.match(await said('text: i, grow: 0.4'), /^A part of the “i” of “tag” \(.+\)$/);
    assert.match(await said('text: of'), /^The “[of]” of “tag” \(.+\)$/);
    assert.match(await said('text: o', 'body: [plate], cut: [word]'), /^The inside of the “o” of “tag” \(.+\)$/);
    assert.match(
      await said('text: B', 'body: [plate], cut: [word]'),
      /^2 parts of “tag”, the largest of them the inside of the “B” \(.+\),$/,
    );
  });

  it('are the counters of letters cut through a plate', async () => {
    const shapes = ['plate: {rectangle: [80, 30]}', 'word: {text: Bo, font: Nunito, weight: 800, height: 20}'];
    const made = await make(specOf(shapes, 'body: [plate], cut: [word]', [stock]));
    // B has two counters, o has one.
    const loose = only(made, 'loose-part');
    assert.equal(loose.places?.length, 3);
    assert.match(
      loose.message,
      /^3 parts of “.+”, the largest .+, are joined to nothing and fall out\. Hold them with “bridges” across “word”\.$/,
    );
    assert.equal(placeOf(made.report, loose).line, 5, 'the word is to blame');
  });

  it('are pieces of a puzzle where the letters are cut as well', async () => {
    const shapes = [
      'plate: {rectangle: [80, 30]}',
      'word: {text: Bo, font: Nunito, weight: 800, height: 20}',
      'holes: {from: word, grow: 0.2 mm}',
    ];
    const said = async (body: string) => (await make(specOf(shapes, body, [stock]))).issues;
    const [first] = found(
      { issues: await said('body: [plate], cut: [holes]}\n  letters: {body: [word], parts: many') },
      'loose-part',
    );
    assert.match(
      first!.message,
      /fall out\. Keep them apart with “parts: many”, as in a puzzle, or hold them with “bridges” across “holes”\.$/,
    );
    const [alone] = found({ issues: await said('body: [plate], cut: [holes]') }, 'loose-part');
    assert.match(alone!.message, /fall out\. Hold them with “bridges” across “holes”\.$/);
  });

  it('are told once where a text falls apart altogether', async () => {
    const made = await make(
      specOf(['body: {text: Chamomile, font: Nunito, width: 90, letter_spacing: 2}'], 'body: [body]', [stock]),
    );
    const loose = found(made, 'loose-part');
    assert.equal(loose.length, 1);
    // Nine letters and the dot of the i.
    assert.match(loose[0]!.message, /10 parts/);
  });

  it('of a piece that is glued on are led to no further backing', async () => {
    const shapes = [
      'plate: {rectangle: [120, 40]}',
      'word: {text: Chamomile, font: Nunito, width: 90, letter_spacing: 2}',
    ];
    const glued = (text: string) =>
      make(
        specOf([shapes[0]!, shapes[1]!.replace('Chamomile', text)], 'body: [plate]', [stock]).replace(
          /\n*$/,
          '\n  top: {body: [word], glue_to: tag}\n',
        ),
      );
    assert.match(
      only(await glued('Chamomile'), 'loose-part').message,
      /parts\. Join them, or glue each by itself with “parts: many”\.$/,
    );
    assert.match(only(await glued('ill'), 'loose-part').message, /, or glue them on separately with “parts: many”\.$/);
  });

  it('are none where separate parts are intended, or where all is joined', async () => {
    const many = await make(
      specOf(['body: {text: ii, font: Nunito, width: 30}'], 'body: [body], parts: many', [stock]),
    );
    assert.deepEqual(found(many, 'loose-part'), []);
    const joined = await make(specOf(['body: {text: L, font: Nunito, width: 30}'], 'body: [body]', [stock]));
    assert.deepEqual(found(joined, 'loose-part'), []);
  });
});

describe('An opening for the tie', () => {
  const tag = (tie: string, hanger: string) =>
    make(specOf(['body: {rectangle: [80, 60]}'], `body: [body], hanger: {${hanger}}`, [`tie: {${tie}}`]));

  // Rule of thumb, no source: twine goes doubled through 1.5 of its diameter; a ribbon lies flat in a slot.
  for (const [tie, hanger, fits] of [
    ['twine: 2', 'hole: {diameter: 3}', true],
    ['twine: 2', 'hole: {diameter: 2.95}', false],
    ['twine: 2', 'ring: {diameter: 2.95}', false],
    ['twine: 3', 'ring: {diameter: 4.5}', true],
    ['ribbon: 10', 'hole: {diameter: 4}', true],
    ['ribbon: 10', 'hole: {diameter: 3.9}', false],
    ['ribbon: 10', 'slot: {length: 10}', true],
    ['ribbon: 10', 'slot: {length: 9.85}', false],
    ['twine: 2', 'slot: {length: 10, width: 2.9}', false],
  ] as const) {
    it(`{${hanger}} ${fits ? 'passes' : 'does not pass'} {${tie}}`, async () => {
      const made = await tag(tie, hanger);
      const issues = found(made, 'hole-too-small');
      assert.equal(issues.length, fits ? 0 : 1);
      for (const issue of issues) {
        assert.equal(placeOf(made.report, issue).line, 6);
        assert.ok(Math.abs(issue.points![0]!.x - made.pieces[0]!.hangers[0]!.centre.x) < 1e-9);
      }
    });
  }

  it('is never too small where its size is left to the tie', async () => {
    for (const tie of ['twine: 1', 'twine: 3.5', 'ribbon: 3', 'ribbon: 25']) {
      for (const kind of ['ring', 'hole', 'slot']) {
        if (tie.startsWith('twine: 3') && kind === 'slot') continue;
        const made = await tag(tie, `${kind}: {at: top}`);
        assert.deepEqual(found(made, 'hole-too-small'), [], `${kind} for ${tie}`);
      }
    }
  });

  it('is blocked by engraving and score lines over it', async () => {
    const shapes = [
      'plate: {rectangle: [80, 40]}',
      'dot: {ellipse: 3, nudge: {up: 14}}',
      'off: {ellipse: 6, nudge: {down: 10}}',
    ];
    const piece = (marks: string) => `body: [plate], ${marks}, hanger: {hole: {at: top, diameter: 4, inset: 4}}`;
    for (const marks of ['engrave: [dot]', 'score: [dot]']) {
      const made = await make(specOf(shapes, piece(marks)));
      const [only] = found(made, 'hole-blocked');
      assert.equal(only?.severity, 'warning', marks);
      assert.equal(placeOf(made.report, only).line, 7);
    }
    assert.deepEqual(found(await make(specOf(shapes, piece('engrave: [off]'))), 'hole-blocked'), []);
  });

  it('is not blocked by an engraved field that it is set in', async () => {
    const shapes = ['plate: {rectangle: [80, 40]}', 'field: {rectangle: [70, 36]}'];
    const piece = 'body: [plate], engrave: [field], hanger: {hole: {at: top, diameter: 4, inset: 5}}';
    assert.deepEqual(found(await make(specOf(shapes, piece)), 'hole-blocked'), []);
    const half = 'body: [plate], engrave: [field], hanger: {hole: {at: top, diameter: 4, inset: 0.5}}';
    assert.equal(found(await make(specOf(shapes, half)), 'hole-blocked').length, 1);
  });

  it('is blocked by a piece glued over it', async () => {
    const text = `tagwright: 1
shapes:
  plate: {rectangle: [80, 40]}
  badge: {ellipse: 20, nudge: {up: 12}}
pieces:
  back: {body: [plate], hanger: {hole: {at: top, diameter: 4}}}
  front: {body: [badge], title: Badge, glue_to: back}
`;
    const made = await make(text);
    const [only] = found(made, 'hole-blocked');
    assert.equal(only?.severity, 'error');
    assert.match(only.message, /Badge/);
    assert.equal(placeOf(made.report, only).line, 6);
    assert.deepEqual(found(await make(text.replace('up: 12', 'down: 9')), 'hole-blocked'), []);
  });
});

describe('Lettering', () => {
  it('that the font does not have is named, at the text', async () => {
    const made = await make(specOf(['body: {text: Mint 🌱, font: Nunito, width: 60}'], 'body: [body], parts: many'));
    const [only, ...others] = found(made, 'missing-glyph');
    assert.deepEqual(others, []);
    assert.match(only!.message, /🌱/);
    assert.match(only!.message, /Nunito/);
    const place = placeOf(made.report, only!);
    assert.equal(place.text, 'Mint 🌱');
    assert.equal(place.line, 3);
  });

  it('in a font that is not there names the one that was meant', async () => {
    const made = await report(specOf(['body: {text: Mint, font: Pacifica, width: 60}']));
    const [only] = made.issues.filter((issue) => issue.code === 'unknown-font');
    assert.deepEqual(only?.suggestions, ['Pacifico']);
    assert.equal(placeOf(made, only).text, 'Pacifica');
  });

  it('in a font that is called like files beside the spec names those', async () => {
    const beside = { 'caveat-700.woff': '', 'Caveat.woff': '', 'cavern.ttf': '', 'caveat.csv': '' };
    for (const [font, code] of [
      ['Caveat', 'unknown-font'],
      ['caveat.ttf', 'bad-font'],
    ] as const) {
      const { issues } = await report(specOf([`body: {text: Mint, font: ${font}, width: 60}`]), newEngine(beside));
      const [only] = issues.filter((issue) => issue.code === code);
      assert.deepEqual(only?.suggestions, ['Caveat.woff', 'caveat-700.woff']);
      assert.match(only.message, /Beside the spec there is “Caveat\.woff”, “caveat-700\.woff”\.$/);
    }
  });
});

describe('Weak bridges', () => {
  // Exact: discs R = 10 with centres 16 apart meet in a chord of 2·√(100 − 64) = 12.
  const shapes = ['a: {ellipse: 20}', 'b: {ellipse: 20, nudge: {right: 16}}'];
  const discs = (minWeb: number) => make(specOf(shapes, 'body: [a, b]', [`stock: {min_web: ${minWeb} mm}`]));

  it('are reported with their exact width and both ends', async () => {
    const [only, ...others] = found(await discs(12.5), 'weak-bridge');
    assert.deepEqual(others, []);
    assertNear(only!.width!, 12, 0.01);
    const [p, q] = only!.points!;
    assertNear(p!.x, 8, 0.05);
    assertNear(q!.x, 8, 0.05);
    assertNear(Math.abs(p!.y - q!.y), 12, 0.01);
    assert.ok(only!.message.includes(`${only!.width!.toFixed(2)} mm`));
  });

  it('are none where the neck is wide enough', async () => {
    const made = await discs(11.9);
    assert.deepEqual(found(made, 'weak-bridge'), []);
    assert.deepEqual(found(made, 'thin-stroke'), []);
  });
});

describe('The samples', () => {
  const folder = new URL('../../../samples/', import.meta.url);
  for (const name of readdirSync(folder).filter((each) => each.endsWith('.tag.yaml'))) {
    const weak = name.includes('weak');
    it(`${name} ${weak ? 'is as weak as it says' : 'is clean'}`, async () => {
      const { issues } = await make(readFileSync(new URL(name, folder), 'utf8'));
      const codes = issues.filter(({ severity }) => severity !== 'info').map(({ code }) => code);
      if (!weak) assert.deepEqual(codes, []);
      else for (const code of ['loose-part', 'hole-too-small']) assert.ok(codes.includes(code as IssueCode), code);
      if (weak) assert.ok(codes.includes('weak-bridge') || codes.includes('thin-stroke'));
    });
  }
});
