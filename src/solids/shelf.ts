import type { ManifoldToplevel } from 'manifold-3d';

/** The solid modeller; it is handed in, so that this room works wherever one has been loaded. */
export type Kernel = ManifoldToplevel;

/** Solids of the modeller, which lie outside of what is collected by itself: kept together and freed together. */
export class Shelf {
  private readonly held = new Set<{ delete: () => void }>();

  keep<T extends { delete: () => void }>(one: T): T {
    this.held.add(one);
    return one;
  }

  free(): void {
    for (const one of this.held) one.delete();
    this.held.clear();
  }
}

/** What `make` makes with a shelf that is empty again afterwards. */
export function withShelf<T>(make: (shelf: Shelf) => T): T {
  const shelf = new Shelf();
  try {
    return make(shelf);
  } finally {
    shelf.free();
  }
}
