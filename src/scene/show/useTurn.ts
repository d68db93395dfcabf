import { type KeyboardEvent, type PointerEvent, useRef } from 'react';

/** Degrees a hand turns the drawing for a px, and a key for a press. */
const DEGREES = { px: 0.3, key: 8 } as const;

const KEYS: Readonly<Record<string, readonly [azimuth: number, elevation: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** A finger, a mouse or the arrow keys turn the drawing: what is pressed follows the hand. */
export function useTurn(turnBy: (azimuth: number, elevation: number) => void) {
  const last = useRef<{ id: number; x: number; y: number } | null>(null);
  const letGo = () => {
    last.current = null;
  };
  return {
    onPointerDown: (event: PointerEvent<HTMLElement>) => {
      if (event.button !== 0 || last.current) return;
      event.currentTarget.setPointerCapture(event.pointerId);
      last.current = { id: event.pointerId, x: event.clientX, y: event.clientY };
    },
    onPointerMove: ({ pointerId, clientX, clientY }: PointerEvent) => {
      const from = last.current;
      if (from?.id !== pointerId) return;
      last.current = { id: pointerId, x: clientX, y: clientY };
      turnBy(-DEGREES.px * (clientX - from.x), DEGREES.px * (clientY - from.y));
    },
    onPointerUp: letGo,
    onPointerCancel: letGo,
    onLostPointerCapture: letGo,
    onKeyDown: (event: KeyboardEvent) => {
      const way = KEYS[event.key];
      if (!way || event.altKey || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      event.stopPropagation();
      turnBy(DEGREES.key * way[0], DEGREES.key * way[1]);
    },
  };
}
