import assert from 'node:assert/strict';
import { markdownTable } from '../../../src/dev/markdown-table.ts';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { loadPage, materialsTable } from '../../../src/dev/materials-table.ts';
import { estimateLoad } from '../../../src/strength/load.ts';
import { make } from '../support/engine.ts';
import { bearing } from './pieces.ts';

const page = readFileSync(join(import.meta.dirname, '..', '..', '..', loadPage), 'utf8');
const examples = [...page.matchAll(/^```yaml example\n([^]*?)^```\n([^]*?)(?=^## )/gm)].map(([, spec, text]) => ({
  spec: spec!,
  text: text!,
}));

/** The steps `expression = result`, as a pocket calculator takes them. */
function stepsIn(text: string): { readonly written: string; readonly left: string; readonly result: string }[] {
  return [...text.matchAll(/`([\d(][^`=]*) = ([\d.]+)`/g)].map(([written, left, result]) => ({
    written,
    left: left!,
    result: result!,
  }));
}

/** Sums, products and brackets, by recursive descent. */
function calculate(expression: string): number {
  const tokens = expression.match(/[\d.]+|[+−×/()]/g)!;
  const sum = (): number => {
    let value = product();
    while (tokens[0] === '+' || tokens[0] === '−') value += tokens.shift() === '+' ? product() : -product();
    return value;
  };
  const product = (): number => {
    let value = factor();
    while (tokens[0] === '×' || tokens[0] === '/') value *= tokens.shift() === '×' ? factor() : 1 / factor();
    return value;
  };
  const factor = (): number => {
    const token = tokens.shift();
    if (token !== '(') return Number(token);
    const value = sum();
    assert.equal(tokens.shift(), ')');
    return value;
  };
  const value = sum();
  assert.deepEqual(tokens, [], expression);
  return value;
}

const estimates = await Promise.all(
  examples.map(async ({ spec }) => {
    const { report } = await make(spec);
    return bearing(estimateLoad(report.tag!.pieces[0]!, report.tag!.stock)!);
  }),
);

describe('The page of what a hanger bears', () => {
  it('works out two tags', () => {
    assert.deepEqual(
      estimates.map(({ weakest }) => weakest.what),
      ['wall', 'strap'],
    );
  });

  examples.forEach(({ text }, index) => {
    const steps = stepsIn(text);

    for (const { written, left, result } of steps) {
      it(`calculates right: ${written}`, () => {
        const digits = result.split('.')[1]?.length ?? 0;
        // As the figures on the page are rounded on the way.
        assert.ok(Math.abs(calculate(left) - Number(result)) <= Math.max(0.6 * 10 ** -digits, 0.002 * Number(result)));
      });
    }

    it(`comes to what the program has: example ${index + 1}`, () => {
      const { shortPull, hanging, weakest } = estimates[index]!;
      const results = steps.map(({ result }) => Number(result));
      for (const figure of [shortPull, hanging!, weakest.effectiveMm])
        assert.ok(
          results.some((result) => Math.abs(result / figure - 1) < 0.005),
          `${figure} is not among ${results.join(', ')}`,
        );
      assert.ok(text.includes(`About ${Number(shortPull.toPrecision(2))} N`), String(shortPull));
    });
  });

  it('lists the materials and their sources as the program has them', () => {
    const { materials, sources } = materialsTable();
    assert.ok(page.includes(markdownTable(materials)), 'npm run generate');
    assert.ok(page.includes(markdownTable(sources)), 'npm run generate');
  });
});
