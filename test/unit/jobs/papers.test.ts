import assert from 'node:assert/strict';
import type { Issue } from '../../../src/core/issue.ts';
import { boxRing } from '../../../src/geometry/measure.ts';
import { sheetMap } from '../../../src/jobs/sheet-map.ts';
import { keptLabel } from '../../../src/jobs/kept-label.ts';
import { TagWarnings } from '../../../src/jobs/tag-warnings.ts';
import { SpecSource } from '../../../src/spec/source.ts';
import { files, jobOf, laidOutJob, plate } from '../support/jobs.ts';
import { tools } from '../support/tools.ts';

describe('The papers of a job', () => {
  it('name the worst tag where the message differs from tag to tag, and no letter that others do not have', () => {
    const source = new SpecSource('a: 1\nb: 2\n');
    const warned = (widths: Readonly<Record<string, [width: number | undefined, message: string]>>) => {
      const warnings = new TagWarnings();
      for (const [label, [width, message]] of Object.entries(widths)) {
        const issue: Issue = {
          code: 'weak-bridge',
          severity: 'warning',
          message,
          path: ['b'],
          range: { start: 5, end: 9 },
          ...(width === undefined ? {} : { width, minimum: 1 }),
        };
        warnings.add({ row: 0, issues: [issue], source }, label);
      }
      return warnings.of('word.tag.yaml');
    };
    const [differing] = warned({
      Poppy: [0.9, 'Weak bridge at “P”.'],
      Nigella: [0.4, 'Weak bridge at “g”.'],
      Rue: [0.6, 'Weak bridge at “R”.'],
      Dill: [0.7, 'Weak bridge at “D”.'],
      Sage: [0.8, 'Weak bridge at “S”.'],
    });
    assert.deepEqual(differing, {
      code: 'weak-bridge',
      message: '“Poppy”, “Nigella”, “Rue” and 2 more (word.tag.yaml, line 2), worst in “Nigella”: Weak bridge at “g”.',
      onPaper:
        '“Poppy”, “Nigella”, “Rue”, “Dill” and “Sage” (word.tag.yaml, line 2), worst in “Nigella”: Weak bridge at “g”.',
    });
    const [alike] = warned({ Rue: [0.5, 'Weak bridge.'], Dill: [0.5, 'Weak bridge.'] });
    assert.deepEqual(alike, { code: 'weak-bridge', message: '“Rue” and “Dill” (word.tag.yaml, line 2): Weak bridge.' });
    const [unmeasured] = warned({ Rue: [undefined, 'Not “R”.'], Dill: [undefined, 'Not “D”.'] });
    assert.equal(unmeasured!.message, '“Rue” and “Dill” (word.tag.yaml, line 2), in “Rue”: Not “R”.');
    assert.equal(warned({ '': [0.5, 'Weak bridge.'] })[0]!.message, 'word.tag.yaml, line 2: Weak bridge.');
  });

  it('show the score lines of every piece on the map, in the colour that the work is listed with', async () => {
    const scored = plate.replace('body: [plate]', 'body: [plate], score: [{rectangle: [30 mm, 20 mm]}]');
    const asked = jobOf(['{spec: plate.tag.yaml, quantity: 2}'], ['ply3: [{size: [140 mm, 60 mm]}]']);
    const [, page] = await sheetMap(await laidOutJob(asked, { ...files, 'plate.tag.yaml': scored }), tools);
    const lines = page!.drawings.flatMap((each) => ('stroke' in each && each.stroke === '#D55E00' ? [each.path] : []));
    const widths = lines.map((path) => {
      const xs = path.flatMap((step) => ('x' in step ? [step.x] : []));
      // A sheet of 140 mm, across a page of 210 less two margins of 15.
      return ((Math.max(...xs) - Math.min(...xs)) * 140) / 180;
    });
    assert.deepEqual(
      widths.map((width) => Number(width.toFixed(3))),
      [30, 30],
    );
    const swatches = page!.drawings.filter((each) => 'fill' in each && each.fill === '#D55E00');
    assert.equal(swatches.length, 1);
  });

  it('give the number of an offcut room on it, on more lines where it is narrow', async () => {
    const face = await tools.captions(600);
    const labelIn = (width: number, height: number) => {
      const label = keptLabel([boxRing({ minX: 5, minY: 7, maxX: 5 + width, maxY: 7 + height })], 7, face)!;
      const { minX, maxX, minY, maxY } = label.box;
      return { ...label, room: Math.min(minX - 5, 5 + width - maxX, minY - 7, 7 + height - maxY) };
    };
    const wide = labelIn(60, 40);
    assert.deepEqual([wide.lines, wide.size], [['keep: offcut 7'], 3]);
    // As wide as the words at that size, and a strip.
    for (const width of [18.3, 11]) {
      const narrow = labelIn(width, 44);
      assert.ok(narrow.lines.length > 1, narrow.lines.join('/'));
      assert.equal(narrow.lines.join(' '), 'keep: offcut 7');
      assert.ok(narrow.room >= 1.2 - 1e-6, `${narrow.room} mm on ${width}`);
    }
    assert.equal(labelIn(3, 44).lines.length, 3, 'a label all the same');
    assert.equal(keptLabel([], 7, face), undefined);
  });
});
