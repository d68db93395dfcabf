import type { Place } from '../../state/session.ts';
import type { Bench, Page } from './place.ts';
import { POSE } from './pose.tsx';
import { REHEARSE } from './rehearse.tsx';
import { SEAT } from './seat.tsx';
import { SHEET } from './sheet.tsx';
import { SHOW } from './show.ts';
import { SITE } from './site.tsx';

/** Every place of the header, and what it puts on the page. */
export const PLACE_PARTS: Readonly<Record<Place, Bench | Page>> = {
  site: SITE,
  place: POSE,
  rehearse: REHEARSE,
  seat: SEAT,
  show: SHOW,
  sheet: SHEET,
};
