import type { Bands, Fixing, Known, Limit, Strength } from './limit.ts';
import type { ReadingId } from './reading.ts';

/** Keys of the default limits; a plan may give bands of its own by the same keys. */
export const LIMIT_KEYS = [
  'facial-wall-crest',
  'facial-wall-deep',
  'palatal-wall',
  'root',
  'depth-screw-bone',
  'depth-screw-gum',
  'depth-cemented',
  'exit-cemented',
  'floor',
  'canal',
  'exposure',
  'contact',
  'exit-screw',
  'emergence',
  'crown-height',
  'tray',
] as const;
export type LimitKey = (typeof LIMIT_KEYS)[number];

const limit = (key: LimitKey, bands: Bands, source: string, known: Known, strength: Strength): Limit => ({
  key,
  bands,
  source,
  known,
  strength,
});

/**
 * The default limits: published numbers where there are any, otherwise ours and marked so. The split between near and beyond is this project's
 * proposal throughout. mm, degrees, mm²; signs as in the reading.
 */
export const DEFAULT_LIMITS: Readonly<Record<LimitKey, Limit>> = {
  'facial-wall-crest': limit(
    'facial-wall-crest',
    { low: { near: 2, beyond: 1 } },
    'spray-2000',
    'memory',
    'convention',
  ),
  'facial-wall-deep': limit('facial-wall-deep', { low: { near: 1, beyond: 0.5 } }, 'ours', 'ours', 'ours'),
  'palatal-wall': limit(
    'palatal-wall',
    { low: { near: 1, beyond: 0 } },
    'no-evidence-palatal',
    'ours',
    'ours',
  ),
  root: limit('root', { low: { near: 1.5, beyond: 1 } }, 'buser-2004', 'second-hand', 'expert'),
  'depth-screw-bone': limit(
    'depth-screw-bone',
    { low: { near: 3, beyond: 2 }, high: { near: 4, beyond: 5 } },
    'margin-2-4',
    'second-hand',
    'consensus',
  ),
  'depth-screw-gum': limit(
    'depth-screw-gum',
    { low: { near: -1, beyond: -2 }, high: { near: 0, beyond: 1 } },
    'buser-2004-cej',
    'memory',
    'consensus',
  ),
  'depth-cemented': limit(
    'depth-cemented',
    { low: { near: 0, beyond: -0.5 }, high: { near: 1, beyond: 1.5 } },
    'linkevicius-2011',
    'read',
    'clinical',
  ),
  'exit-cemented': limit(
    'exit-cemented',
    { low: { near: -1, beyond: -2 }, high: { near: 0, beyond: 1.5 } },
    'ours-incisal-edge',
    'ours',
    'convention',
  ),
  floor: limit('floor', { low: { near: 2, beyond: 0 } }, 'ours-margin', 'ours', 'ours'),
  canal: limit('canal', { low: { near: 2, beyond: 0 } }, 'ours-margin', 'ours', 'ours'),
  exposure: limit('exposure', { high: { near: 0, beyond: 0 } }, 'ours', 'ours', 'ours'),
  contact: limit('contact', { high: { near: 5, beyond: 7 } }, 'tarnow-1992', 'read', 'good'),
  'exit-screw': limit(
    'exit-screw',
    { high: { near: 0, beyond: 25 } },
    'angled-channel-25',
    'second-hand',
    'moderate',
  ),
  emergence: limit(
    'emergence',
    { high: { near: 30, beyond: 40 } },
    'katafuchi-2018',
    'read',
    'cross-sectional',
  ),
  'crown-height': limit(
    'crown-height',
    { low: { near: 7, beyond: 5 } },
    'carpentieri-2019',
    'read',
    'review',
  ),
  tray: limit('tray', { low: { near: 0.5, beyond: 0 } }, 'ours-crown', 'ours', 'ours'),
};

/** Levels down to which the crest's band of the facial wall holds, mm apical of the entry. */
export const CREST_BAND = 3;

const WALL = /^(facial|palatal)-wall-/;

/** The limit of a reading under a fixing, or null. `level`: where it was found; the facial wall's band depends on it. */
export function limitOf(
  id: ReadingId,
  fixing: Fixing,
  level: number | null,
  own: Readonly<Record<string, Bands>>,
): Limit | null {
  const key = keyOf(id, fixing, level);
  if (!key) return null;
  const bands = own[key];
  const found = DEFAULT_LIMITS[key];
  return bands ? { ...found, bands, source: 'own', known: 'ours', strength: 'ours' } : found;
}

/** The limit of a bent channel, also where the crown is cemented and nothing is judged by it. */
export const exitLimit = (own: Readonly<Record<string, Bands>>): Limit =>
  limitOf('access-exit-correction', 'screw-bone', null, own) ?? DEFAULT_LIMITS['exit-screw'];

function keyOf(id: ReadingId, fixing: Fixing, level: number | null): LimitKey | null {
  const wall = WALL.exec(id);
  if (wall) {
    if (wall[1] === 'palatal') return 'palatal-wall';
    return (level ?? 0) <= CREST_BAND + 1e-9 ? 'facial-wall-crest' : 'facial-wall-deep';
  }
  switch (id) {
    case 'root-mesial':
    case 'root-distal':
    case 'root-mesial-shoulder':
    case 'root-distal-shoulder':
      return 'root';
    case 'shoulder-to-gum-margin':
      return fixing === 'screw-bone' ? 'depth-screw-bone' : fixing === 'cemented' ? 'depth-cemented' : null;
    case 'shoulder-to-cej':
      return fixing === 'screw-gum' ? 'depth-screw-gum' : null;
    case 'incisal-line-offset':
      return fixing === 'cemented' ? 'exit-cemented' : null;
    case 'apex-to-floor':
      return 'floor';
    case 'canal':
      return 'canal';
    case 'contact-to-crest-mesial':
    case 'contact-to-crest-distal':
      return 'contact';
    case 'access-exit-correction':
      return fixing === 'cemented' ? null : 'exit-screw';
    case 'emergence-mesial':
    case 'emergence-distal':
      return 'emergence';
    case 'crown-height':
      return 'crown-height';
    case 'tray-room':
      return 'tray';
    case 'exposure-dehiscence':
    case 'exposure-fenestration':
      return 'exposure';
    default:
      return null;
  }
}
