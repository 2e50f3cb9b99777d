/**
 * Holds a code together that is cut through: where two of its light modules meet only at a corner, they are joined at
 * the given width, and bridges of that width cross the dark modules to every light part that would fall out, such as
 * the ring in each of the three finder patterns. They keep away from the middle of such a part, where readers look.
 */

/** A closed ring in modules, x to the right and y down from the upper left corner. */
export type ModuleRing = readonly (readonly [x: number, y: number])[];

type Matrix = readonly (readonly boolean[])[];

/** A light part, as its modules: y · stride + x. */
type LightPart = readonly number[];

/** Number of sides on which a part is held: more would break the outlines that readers look for (our own judgement). */
const perPart = 2;

/**
 * Cost of a bridge through the middle of a part: another is preferred unless it crosses more dark modules than this.
 */
const throughMiddle = 4;

/** Distance from the middle line that counts as through the middle, in modules. */
const middleModules = 0.5;

function costOf({ dark, aside }: { readonly dark: number; readonly aside: number }): number {
  return Math.max(dark, aside < middleModules ? throughMiddle : 0);
}

const ways = [
  [0, -1],
  [0, 1],
  [-1, 0],
  [1, 0],
] as const;

/** The parts of the dark modules that are left standing; `width` in modules, less than 1. */
export function bridgesOf(matrix: Matrix, width: number): ModuleRing[] {
  const framed = new Framed(matrix);
  return [...framed.corners(width), ...framed.bridges(width)];
}

/** The code with a frame of light modules round it, which stands for the plate. */
class Framed {
  readonly #matrix: Matrix;
  readonly #stride: number;
  readonly #parts: readonly LightPart[];
  /** The part that each light module belongs to. */
  readonly #partAt = new Map<number, number>();

  constructor(matrix: Matrix) {
    this.#matrix = matrix;
    this.#stride = matrix.length + 2;
    this.#parts = this.#findParts();
  }

  #isDark(x: number, y: number): boolean {
    return this.#matrix[y - 1]?.[x - 1] ?? false;
  }

  #isWithin(x: number, y: number): boolean {
    return x >= 0 && y >= 0 && x < this.#stride && y < this.#stride;
  }

  /** Light modules that touch, even at corners, are one part; the plate is the first. */
  #findParts(): LightPart[] {
    const parts: LightPart[] = [];
    for (let start = 0; start < this.#stride ** 2; start++) {
      if (this.#partAt.has(start) || this.#isDark(start % this.#stride, Math.floor(start / this.#stride))) continue;
      const part = [start];
      this.#partAt.set(start, parts.length);
      // Grows while it is iterated.
      for (const at of part)
        for (const next of this.#lightRound(at)) {
          if (this.#partAt.has(next)) continue;
          this.#partAt.set(next, parts.length);
          part.push(next);
        }
      parts.push(part);
    }
    return parts;
  }

  #lightRound(at: number): number[] {
    const [x, y] = [at % this.#stride, Math.floor(at / this.#stride)];
    return [-1, 0, 1].flatMap((dy) =>
      [-1, 0, 1].flatMap((dx) =>
        this.#isWithin(x + dx, y + dy) && !this.#isDark(x + dx, y + dy) ? [(y + dy) * this.#stride + x + dx] : [],
      ),
    );
  }

  /** A square on its corner wherever two light modules meet only at a corner. */
  corners(width: number): ModuleRing[] {
    const half = width / Math.SQRT2;
    const found: ModuleRing[] = [];
    for (let y = 1; y < this.#stride; y++)
      for (let x = 1; x < this.#stride; x++) {
        const isRising = this.#isDark(x - 1, y - 1);
        const meets =
          this.#isDark(x, y) === isRising &&
          this.#isDark(x, y - 1) === !isRising &&
          this.#isDark(x - 1, y) === !isRising;
        if (!meets) continue;
        const [cx, cy] = [x - 1, y - 1];
        found.push([
          [cx, cy - half],
          [cx + half, cy],
          [cx, cy + half],
          [cx - half, cy],
        ]);
      }
    return found;
  }

  /** The bridges, part by part, each to something that is held already. */
  bridges(width: number): ModuleRing[] {
    const held = new Set([0]);
    const found: ModuleRing[] = [];
    for (let before = 0; held.size > before;) {
      before = held.size;
      this.#parts.forEach((part, index) => {
        if (held.has(index)) return;
        const bridges = this.#toHeld(part, held, width);
        if (bridges.length > 0) held.add(index);
        found.push(...bridges);
      });
    }
    return found;
  }

  /**
   * One bridge on each side where the way is shortest and off the middle; of equally short ones, the furthest from it.
   */
  #toHeld(part: LightPart, held: ReadonlySet<number>, width: number): ModuleRing[] {
    const middle = {
      x: part.reduce((sum, at) => sum + (at % this.#stride), 0) / part.length,
      y: part.reduce((sum, at) => sum + Math.floor(at / this.#stride), 0) / part.length,
    };
    const sides = ways.flatMap(([dx, dy]) => {
      const all = part.flatMap((at) => {
        const [x, y] = [at % this.#stride, Math.floor(at / this.#stride)];
        let dark = 0;
        while (this.#isDark(x + (dark + 1) * dx, y + (dark + 1) * dy)) dark++;
        const to = this.#partAt.get((y + (dark + 1) * dy) * this.#stride + x + (dark + 1) * dx);
        const aside = dx === 0 ? Math.abs(x - middle.x) : Math.abs(y - middle.y);
        return dark > 0 && to !== undefined && held.has(to) ? [{ x, y, dx, dy, dark, aside }] : [];
      });
      return all.sort((a, b) => costOf(a) - costOf(b) || b.aside - a.aside).slice(0, 1);
    });
    return sides
      .sort((a, b) => costOf(a) - costOf(b))
      .slice(0, perPart)
      .map(({ x, y, dx, dy, dark }) => {
        // From the middle of the light module, in coordinates without the frame, to the middle of the one beyond.
        const [cx, cy] = [x - 0.5, y - 0.5];
        const [ex, ey] = [cx + (dark + 1) * dx, cy + (dark + 1) * dy];
        const [sx, sy] = [(Math.abs(dy) * width) / 2, (Math.abs(dx) * width) / 2];
        return [
          [cx - sx, cy - sy],
          [cx + sx, cy + sy],
          [ex + sx, ey + sy],
          [ex - sx, ey - sy],
        ];
      });
  }
}
