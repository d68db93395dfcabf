import { type Drawing, moved, text } from './shapes.ts';

const TYPE = { heading: 3.9, foot: 2.7 } as const;
/** No narrower than this, mm: the words need the room. */
const LEAST = 92;

/** Drawings one under another on a ground of their own, a heading over them and lines under them: what a file that stands alone has to say. mm from the upper left. */
export function signed(drawings: readonly Drawing[], heading: string, foot: readonly string[]): Drawing {
  const width = Math.max(LEAST, ...drawings.map((one) => one.width)) + 8;
  let y = 9;
  const placed = drawings.flatMap(({ left, top, width: own, height, shapes }) => {
    const by = { x: (width - own) / 2 - left, y: y - top };
    y += height + 3;
    return shapes.map((shape) => moved(shape, by));
  });
  const lines = foot.map((line, i) => text(4, y + 3 + i * 3.6, line, TYPE.foot, { tone: 'soft' }));
  return {
    left: 0,
    top: 0,
    width,
    height: y + 3 + foot.length * 3.6,
    label: heading,
    shapes: [text(4, 6, heading, TYPE.heading, { strong: true }), ...placed, ...lines],
  };
}
