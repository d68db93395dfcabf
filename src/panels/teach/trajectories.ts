import type { TrajectoryId } from '../../core/teaching/trajectories.ts';
import type { BoneLook, SectionKind, View } from '../../state/session.ts';

/** The bad trajectories by what a hand does wrong, in the order of the rail. */
export const TRAJECTORY_GROUPS = [
  { group: 'entry', ids: ['too-facial', 'too-palatal', 'into-canal', 'centred-in-socket'] },
  {
    group: 'axis',
    ids: ['apex-facial', 'apex-palatal', 'facial-and-upright', 'along-ridge', 'along-crown'],
  },
  { group: 'neighbours', ids: ['mesial-root', 'distal-root', 'too-wide'] },
  { group: 'depth', ids: ['too-shallow', 'too-deep', 'past-floor'] },
  { group: 'drill', ids: ['off-palatal-wall', 'oval-hole', 'neck-turned'] },
] as const satisfies readonly { group: string; ids: readonly TrajectoryId[] }[];

/** How the model is looked at. */
export interface Sight {
  readonly view: View;
  readonly bone: BoneLook;
  readonly section: SectionKind;
  /** mm apical of the entry; where the section runs across the axis. */
  readonly sectionLevel?: number;
  /** The gum is taken off where it would lie over what is looked at. */
  readonly gum: boolean;
}

const FROM_MESIAL: Sight = { view: 'mesial', bone: 'cut', section: 'faciopalatal', gum: true };
const FACIAL: Sight = { view: 'facial', bone: 'translucent', section: 'mesiodistal', gum: false };

const OTHERS: Partial<Record<TrajectoryId, Sight>> = {
  'mesial-root': FACIAL,
  'distal-root': FACIAL,
  'too-wide': FACIAL,
  'into-canal': { view: 'palatal', bone: 'translucent', section: 'across', sectionLevel: 3, gum: false },
  'neck-turned': { view: 'incisal', bone: 'whole', section: 'faciopalatal', gum: true },
  'oval-hole': { ...FROM_MESIAL, section: 'across', sectionLevel: 3 },
};

/** The view and the section that show a trajectory best: what goes wrong faciopalatally on the cut from mesial, mesiodistally from facial. */
export const sightOf = (id: TrajectoryId): Sight => OTHERS[id] ?? FROM_MESIAL;
