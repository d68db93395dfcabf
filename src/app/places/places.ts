import type { Place, SessionState } from '../../state/session.ts';
import { CROWN } from './crown.tsx';
import type { Bench, Page } from './place.ts';
import { POSE } from './pose.tsx';
import { REHEARSE } from './rehearse.tsx';
import { SEAT } from './seat.tsx';
import { SHEET } from './sheet.tsx';
import { SHOW } from './show.ts';
import { SITE } from './site.tsx';
import { TEACH } from './teach.tsx';

/** The places of the header that put one thing on the page. */
const PLACE_PARTS: Readonly<Record<Exclude<Place, 'teach'>, Bench | Page>> = {
  site: SITE,
  place: POSE,
  rehearse: REHEARSE,
  seat: SEAT,
  crown: CROWN,
  show: SHOW,
  sheet: SHEET,
};

/** What the place that the session is at puts on the page. */
export const partsOf = ({ place, teaching }: Pick<SessionState, 'place' | 'teaching'>): Bench | Page =>
  place === 'teach' ? TEACH[teaching] : PLACE_PARTS[place];
