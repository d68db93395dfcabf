import type { Fixing } from '../core/measure/limit.ts';
import type { Reading, ReadingId, Reason } from '../core/measure/reading.ts';
import { DEPTH_OF } from '../core/plan/crownAnswer.ts';
import type { MessageKey } from '../words/say.ts';

/** Rows of the table under one heading. */
export interface ReadingGroup {
  readonly heading: MessageKey & (`group.${string}` | 'readings.key');
  readonly ids: readonly ReadingId[];
}

const keyOf = (fixing: Fixing): readonly ReadingId[] => [
  'facial-wall-1mm',
  'facial-wall-3mm',
  'facial-wall-thinnest',
  'palatal-wall-thinnest',
  'root-mesial',
  'root-distal',
  'incisal-line-offset',
  DEPTH_OF[fixing],
  'apex-to-floor',
];

const GROUPS: readonly ReadingGroup[] = [
  {
    heading: 'group.walls',
    ids: [
      'facial-wall-1mm',
      'facial-wall-3mm',
      'facial-wall-5mm',
      'facial-wall-apex',
      'facial-wall-thinnest',
      'facial-wall-true',
      'palatal-wall-1mm',
      'palatal-wall-3mm',
      'palatal-wall-5mm',
      'palatal-wall-apex',
      'palatal-wall-thinnest',
      'palatal-wall-true',
      'socket-gap-facial',
    ],
  },
  {
    heading: 'group.line',
    ids: [
      'incisal-line-offset',
      'incisal-line-place',
      'incisal-line-angle',
      'centring-crest',
      'centring-apex',
      'centring-mesiodistal-crest',
      'centring-mesiodistal-incisal',
      'axis-to-roots-mesiodistal',
      'axis-to-ridge-faciopalatal',
      'axis-to-ridge-mesiodistal',
      'axis-to-ridge-total',
      'axis-to-crown-faciopalatal',
      'axis-to-crown-mesiodistal',
      'axis-to-crown-total',
    ],
  },
  {
    heading: 'group.depth',
    ids: [
      'shoulder-to-gum-margin',
      'shoulder-to-cej',
      'shoulder-to-gum-present',
      'shoulder-to-crest-facial',
      'shoulder-to-crest-palatal',
      'shoulder-to-crest-mesial',
      'shoulder-to-crest-distal',
    ],
  },
  {
    heading: 'group.neighbours',
    ids: [
      'root-mesial',
      'root-mesial-shoulder',
      'root-distal',
      'root-distal-shoulder',
      'apex-to-floor',
      'apex-to-concavity',
      'canal',
      'canal-level',
    ],
  },
  {
    heading: 'group.contact',
    ids: [
      'exposure-dehiscence',
      'exposure-fenestration',
      'exposure-socket',
      'exposed-threads',
      'bone-contact',
    ],
  },
  {
    heading: 'group.crown',
    ids: [
      'access-exit',
      'access-exit-to-edge',
      'access-exit-correction',
      'abutment-reduction-depth',
      'abutment-reduction-volume',
      'margin-reduction',
      'emergence-mesial',
      'emergence-distal',
      'emergence-facial',
      'crown-height',
      'palatal-clearance',
      'tray-room',
      'mesiodistal-room',
      'contact-to-crest-mesial',
      'contact-to-crest-distal',
    ],
  },
  { heading: 'group.neck', ids: ['neck-facing', 'neck-facing-cost'] },
];

/** Reasons that site, shape and fixing have for a reading that does not apply: no hand that moves the implant changes them. */
const RULED_OUT: ReadonlySet<Reason | null> = new Set<Reason>([
  'wrong-fixing',
  'one-piece',
  'no-abutment',
  'round-neck',
  'healed-site',
  'canal-elsewhere',
  'opponents-elsewhere',
]);

/** The readings of a group: those that this site, shape and fixing rule out come last. */
export function applyingFirst(ids: readonly ReadingId[], of: ReadonlyMap<ReadingId, Reading>): ReadingId[] {
  const out = (id: ReadingId): boolean => RULED_OUT.has(of.get(id)?.reason ?? null);
  return [...ids.filter((id) => !out(id)), ...ids.filter(out)];
}

/** Every reading once: the ones a hand watches first (before them, where the crown is looked at, those of the crown), the rest by what they are about. */
export function readingGroups(fixing: Fixing, ofCrown = false): readonly ReadingGroup[] {
  const key = keyOf(fixing);
  const rest = GROUPS.map(({ heading, ids }) => ({ heading, ids: ids.filter((id) => !key.includes(id)) }));
  const all: ReadingGroup[] = [{ heading: 'readings.key', ids: key }, ...rest];
  const first = all.filter(({ heading }) => ofCrown && heading === 'group.crown');
  return [...first, ...all.filter((group) => !first.includes(group))];
}
