import { useEffect, useRef } from 'react';
import { createPortal } from 'react-dom';

/** A ring in ink that follows the mouse, to be seen from the back row; held down, it fills. */
export function PresenterRing() {
  const ring = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const follow = ({ clientX, clientY, buttons }: PointerEvent) => {
      const node = ring.current;
      if (!node) return;
      node.style.translate = `${clientX}px ${clientY}px`;
      node.dataset.held = `${buttons > 0}`;
      node.hidden = false;
    };
    const events = ['pointermove', 'pointerdown', 'pointerup'] as const;
    for (const name of events) window.addEventListener(name, follow);
    return () => {
      for (const name of events) window.removeEventListener(name, follow);
    };
  }, []);
  return createPortal(
    <div ref={ring} className="presenter-ring" aria-hidden="true" hidden>
      <svg viewBox="-30 -30 60 60" aria-hidden="true">
        <circle className="ring-casing" r="24" />
        <circle className="ring-ink" r="24" />
      </svg>
    </div>,
    document.body,
  );
}
