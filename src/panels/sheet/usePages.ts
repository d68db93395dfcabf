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
 * which its `[data-block]`s stand. Measured again whenever the blocks or the paper change and when fonts have come.
 */
export function usePages(
  root: RefObject<HTMLElement | null>,
  inOrder: readonly unknown[],
  paper: string,
): readonly number[] {
  const { length: count } = inOrder;
  const [pages, setPages] = useState<readonly number[]>([]);
  const [fonts, setFonts] = useState(0);

  useLayoutEffect(() => {
    const { fonts: faces } = document;
    let gone = false;
    void faces.ready.then(() => !gone && setFonts((n) => n + 1));
    return () => {
      gone = true;
    };
  }, []);

  // biome-ignore lint/correctness/useExhaustiveDependencies: what is not read here says when to measure
  useLayoutEffect(() => {
    const rooms = [...(root.current?.querySelectorAll('[data-room]') ?? [])].map(heightOf);
    const blocks = [...(root.current?.querySelectorAll('[data-block]') ?? [])];
    const heights = Array.from({ length: count }, (_, i) =>
      heightOf(blocks.find((block) => block.getAttribute('data-block') === `${i}`) ?? blocks[0]),
    );
    if (rooms.length === 0 || blocks.length === 0) return;
    const next = packed(heights, rooms[0], rooms[1] ?? rooms[0]);
    setPages((before) => (same(before, next) ? before : next));
  }, [root, count, inOrder, paper, fonts, pages]);

  return pages.length === count ? pages : Array.from({ length: count }, () => 0);
}
