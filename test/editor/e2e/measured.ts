import type { Editor } from '../editor.ts';

/** Width and height of all that an SVG file cuts, in mm, measured by the browser: CSS fixes 1 in = 25.4 mm = 96 px. */
export async function measured(editor: Editor, svg: string): Promise<[number, number]> {
  const page = await editor.page.context().newPage();
  await page.setContent(svg);
  const boxes = await page.locator('path').evaluateAll((paths) =>
    paths.map((path) => {
      const { x, y, width, height } = (path as SVGPathElement).getBBox();
      const toScreen = (path as SVGPathElement).getScreenCTM()!;
      const from = new DOMPoint(x, y).matrixTransform(toScreen);
      const to = new DOMPoint(x + width, y + height).matrixTransform(toScreen);
      return [from.x, from.y, to.x, to.y] as const;
    }),
  );
  await page.close();
  const [width, height] = ([0, 1] as const).map(
    (axis) => Math.max(...boxes.map((box) => box[axis + 2]!)) - Math.min(...boxes.map((box) => box[axis])),
  );
  return [(width! / 96) * 25.4, (height! / 96) * 25.4];
}
