import { type RefObject, useLayoutEffect, useState } from 'react';

/** Puts blocks of given heights on pages of given rooms (of the first page, of every later one), in order, a new page where the next one does not fit. Returns the page of each. */
export function packed(heights: readonly number[], first: number, later: number): number[] {
  let page = 0;
  let left = first;
  return heights.map((height) => {
    if (height > left && left < (page === 0 ? first : later)) {
      page++;
      left = later;
    }
    left -= height;
    return page;
  });
}

const same = (a: readonly number[], b: readonly number[]): boolean =>
  a.length === b.length && a.every((v, i) => v === b[i]);

const heightOf = (element: Element): number => element.getBoundingClientRect().height;

/**
 * On which page each block stands: measured where they happen to be, since a block is as high on one page as on another. `root` holds the pages, each with a `[data-room]` in
 * which its `[data-block]`s stand. Measured again whenever the blocks or the paper change, and whenever a block comes out higher, as when a font has come.
 */
export function usePages(
  root: RefObject<HTMLElement | null>,
  inOrder: readonly unknown[],
  paper: string,
): readonly number[] {
  const { length: count } = inOrder;
  const [pages, setPages] = useState<readonly number[]>([]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: what is not read here says when to measure
  useLayoutEffect(() => {
    const rooms = [...(root.current?.querySelectorAll('[data-room]') ?? [])];
    const blocks = [...(root.current?.querySelectorAll('[data-block]') ?? [])];
    const measure = () => {
      const [first, later = first] = rooms.map(heightOf);
      const next = packed(blocks.map(heightOf), first, later);
      setPages((before) => (same(before, next) ? before : next));
    };
    if (rooms.length === 0 || blocks.length !== count) return;
    measure();
    const watch = new ResizeObserver(measure);
    for (const element of [...rooms, ...blocks]) watch.observe(element);
    return () => watch.disconnect();
  }, [root, count, inOrder, paper, pages]);

  return pages.length === count ? pages : Array.from({ length: count }, () => 0);
}
