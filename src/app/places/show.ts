import type { Page } from './place.ts';
import { ShowPage } from './ShowPage.tsx';

/** *Show*: the planned position for the patient, in pictures and plain words, on a page of its own. */
export const SHOW: Page = { kind: 'page', Page: ShowPage };
