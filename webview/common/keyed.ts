/** Lists of elements that are patched, not rebuilt: an element lives as long as its key does. */

export type PatchStep =
  | { readonly kind: 'remove'; readonly key: string }
  /** Inserts an element, or moves it if it exists; `before` absent: to the end. */
  | { readonly kind: 'place'; readonly key: string; readonly before?: string };

/**
 * Steps that turn one order of keys into another without touching those in the right place. Keys are unique in each.
 */
export function planPatch(current: readonly string[], wanted: readonly string[]): PatchStep[] {
  const kept = new Set(wanted);
  const steps: PatchStep[] = [];
  const order: string[] = [];
  for (const key of current) {
    if (kept.has(key)) order.push(key);
    else steps.push({ kind: 'remove', key });
  }
  wanted.forEach((key, index) => {
    const there = order[index];
    if (there === key) return;
    const from = order.indexOf(key, index);
    if (from >= 0) order.splice(from, 1);
    order.splice(index, 0, key);
    steps.push(there === undefined ? { kind: 'place', key } : { kind: 'place', key, before: there });
  });
  return steps;
}

/** An element that shows an item and is updated with it. */
export interface ItemView<Item> {
  readonly element: Element;
  update(item: Item): void;
}

export class KeyedList<Item extends { readonly id: string }, View extends ItemView<Item> = ItemView<Item>> {
  private readonly views = new Map<string, View>();
  private order: readonly string[] = [];

  constructor(
    private readonly parent: Element,
    private readonly create: () => View,
  ) {}

  patch(items: readonly Item[]): void {
    const byId = new Map(items.map((item) => [item.id, item]));
    const wanted = [...byId.keys()];
    for (const step of planPatch(this.order, wanted)) {
      if (step.kind === 'remove') {
        this.views.get(step.key)!.element.remove();
        this.views.delete(step.key);
        continue;
      }
      let view = this.views.get(step.key);
      if (!view) this.views.set(step.key, (view = this.create()));
      this.parent.insertBefore(view.element, step.before === undefined ? null : this.views.get(step.before)!.element);
    }
    this.order = wanted;
    for (const [id, item] of byId) this.views.get(id)!.update(item);
  }

  get(id: string): View | undefined {
    return this.views.get(id);
  }
}
