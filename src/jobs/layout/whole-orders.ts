/** Which orders go on one sheet or offcut as a whole, on any that there is. */

import { area } from '../../geometry/measure.ts';
import type { PieceToFill } from './piece-to-fill.ts';
import { nestIn, trialShare } from './nest-in-room.ts';
import type { NestInRoomOptions } from './nest-in-room.ts';
import { fits, roomOutline } from './rooms.ts';
import type { Room } from './rooms.ts';

export class WholeOrders {
  readonly #rooms: readonly Room[];
  readonly #options: NestInRoomOptions;
  readonly #known = new Map<string, boolean>();

  constructor(rooms: readonly Room[], options: NestInRoomOptions) {
    this.#rooms = rooms;
    this.#options = options;
  }

  /** `own`: what there still is of the order. What else lies on a sheet is not asked about. */
  async goesOnOne(order: string, own: readonly PieceToFill[]): Promise<boolean> {
    const key = `${order} ${own.length}`;
    const known = this.#known.get(key);
    if (known !== undefined) return known;
    let found = false;
    for (const room of this.#rooms) if (!found) found = await this.#goesOn(room, own);
    this.#known.set(key, found);
    return found;
  }

  async #goesOn(room: Room, own: readonly PieceToFill[]): Promise<boolean> {
    if (!own.every(({ region }) => fits(region, room))) return false;
    if (own.reduce((sum, { region }) => sum + area(region), 0) > area(roomOutline(room))) return false;
    const { missing } = room;
    const settled = missing.length > 0 ? [{ regions: missing, orders: new Set<string>(), isRushed: false }] : [];
    const [first = []] = await nestIn(room, own, settled, { ...this.#options, share: trialShare });
    return first.length === own.length;
  }
}
