import type { Place, SessionState } from '../../state/session.ts';
import type { Bench, Page } from './place.ts';
import { POSE } from './pose.tsx';

/** What each place of the header puts on the page, by what is taught there. The place that a new user meets comes with the program, the others are loaded when they are first gone to. */
const LOADS: Readonly<Record<Exclude<Place, 'place' | 'teach'>, () => Promise<Bench | Page>>> = {
  site: async () => (await import('./site.tsx')).SITE,
  rehearse: async () => (await import('./rehearse.tsx')).REHEARSE,
  seat: async () => (await import('./seat.tsx')).SEAT,
  crown: async () => (await import('./crown.tsx')).CROWN,
  show: async () => (await import('./show.ts')).SHOW,
  sheet: async () => (await import('./sheet.tsx')).SHEET,
};

type At = Pick<SessionState, 'place' | 'teaching'>;

const nameOf = ({ place, teaching }: At): string => (place === 'teach' ? `teach ${teaching}` : place);

const loaded = new Map<string, Bench | Page>([['place', POSE]]);

/** What the place that the session is at puts on the page; null: it is not loaded yet. */
export const partsAt = (at: At): Bench | Page | null => loaded.get(nameOf(at)) ?? null;

/** Loads that place, if it has not been. Rejects where it cannot be had: without a network, before the whole program was laid by. */
export async function load(at: At): Promise<void> {
  const { place, teaching } = at;
  if (place === 'place' || loaded.has(nameOf(at))) return;
  const parts = place === 'teach' ? (await import('./teach.tsx')).TEACH[teaching] : await LOADS[place]();
  loaded.set(nameOf(at), parts);
}
