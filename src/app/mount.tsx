import { type ReactNode, StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import './fonts.css';
import './tokens.css';
import './base.css';
import './layout.css';
import './projector.css';
import './print.css';

/** Puts the page into an element, in strict mode: in development every effect must survive being run twice. */
export function mount(element: Element, page: ReactNode): void {
  createRoot(element).render(<StrictMode>{page}</StrictMode>);
}
