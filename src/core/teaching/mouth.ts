import { totalLength } from '../implant/shape.ts';
import type { Known } from '../measure/limit.ts';
import type { ReadingId } from '../measure/reading.ts';
import { type Evaluation, readingOf } from '../plan/evaluate.ts';
import type { Plan } from '../plan/plan.ts';
import { deviation } from '../spread/deviation.ts';
import { evaluated } from './evaluated.ts';

/** What a dentist, or the patient, would see or feel in the mouth (rule L4). */
export const SIGN_CODES = [
  'root-cut',
  'floor-entered',
  'canal-entered',
  'shoulder-shows',
  'threads-bare',
  'grey-shine',
  'facial-wall-gone',
  'recession',
  'recession-shift',
  'bump',
  'exit-facial',
  'exit-edge',
  'crown-proud',
  'crown-overlaps',
  'deep-margin',
  'crown-short',
  'steep-emergence',
  'papilla-low',
  'bite-met',
  'neck-off',
  'socket-collapse',
] as const;
export type SignCode = (typeof SIGN_CODES)[number];

export interface MouthSign {
  readonly code: SignCode;
  /** The reading it follows from; null: from the way the platform has gone. */
  readonly reading: ReadingId | null;
  readonly value: number;
  readonly unit: 'mm' | 'deg' | 'mm2' | 'place';
  /** Whose observation it is that the reading leads to this. */
  readonly source: string;
  readonly known: Known;
}

/** Gum at most so thick lets what is dark shine through, mm (Kan 2010). */
const THIN_GUM = 1;
/** A platform so far facially is seen at the gum's margin, mm (Fürhauser 2015, from memory). */
const SEEN_SHIFT = 0.8;
/** A gap before a thin socket wall is to be at least so wide, mm (consensus, from memory). */
const SOCKET_GAP = 2;
/** A smaller bare patch is nothing that an eye or a probe would find, mm² (ours). */
const FOUND_BARE = 0.1;
/** Under this the wall at the crest is expected to be lost, mm (Chappuis 2013: socket walls). */
const THIN_WALL = 1;

type Found = Omit<MouthSign, 'reading'> & { readonly reading: ReadingId };
type Source = Pick<MouthSign, 'source' | 'known'>;

const GEOMETRY: Source = { source: 'ours-geometry', known: 'derived' };

function signsOf({ plan, readings }: Evaluation): Found[] {
  const out: Found[] = [];
  const value = (id: ReadingId) => readingOf(readings, id).value;
  const sign = (code: SignCode, id: ReadingId, when: (v: number) => boolean, source: Source = GEOMETRY) => {
    const { value: v, unit } = readingOf(readings, id);
    if (v !== null && when(v))
      out.push({ code, reading: id, value: v, unit: unit as Found['unit'], ...source });
  };
  const judged = (code: SignCode, id: ReadingId, side: 'low' | 'high', band: 'near' | 'beyond') => {
    const { limit } = readingOf(readings, id);
    const bound = limit?.bands[side]?.[band];
    if (limit && bound !== undefined) sign(code, id, (v) => (side === 'low' ? v < bound : v > bound), limit);
  };
  for (const side of ['mesial', 'distal'] as const) {
    sign('root-cut', `root-${side}`, (v) => v < 0);
    if ((value(`root-${side}`) ?? 0) >= 0) judged('papilla-low', `root-${side}`, 'low', 'beyond');
    judged('steep-emergence', `emergence-${side}`, 'high', 'near');
  }
  sign('floor-entered', 'apex-to-floor', (v) => v < 0);
  sign('canal-entered', 'canal', (v) => v < 0);
  sign('shoulder-shows', 'shoulder-to-gum-margin', (v) => v < 0);
  const bare = value('exposure-dehiscence') ?? 0;
  const thin = plan.site.gum.facial <= THIN_GUM;
  const facially = (value('facial-wall-thinnest') ?? 1) < 0;
  sign('threads-bare', 'exposure-dehiscence', (v) => v >= FOUND_BARE);
  if (bare >= FOUND_BARE && facially && thin)
    sign('grey-shine', 'exposure-dehiscence', () => true, { source: 'kan-2010', known: 'read' });
  sign('facial-wall-gone', 'facial-wall-1mm', (v) => v < 0);
  sign('recession', 'facial-wall-1mm', (v) => v >= 0 && v < THIN_WALL, {
    source: 'chappuis-2013',
    known: 'memory',
  });
  if (facially) sign('bump', 'exposure-fenestration', (v) => v >= FOUND_BARE);
  sign('exit-facial', 'access-exit', (v) => v === -1);
  sign('exit-edge', 'access-exit', (v) => v === 0);
  judged('crown-proud', 'incisal-line-offset', 'high', 'beyond');
  judged('crown-overlaps', 'incisal-line-offset', 'low', 'beyond');
  judged('deep-margin', 'shoulder-to-gum-margin', 'high', 'beyond');
  judged('crown-short', 'crown-height', 'low', 'beyond');
  sign('bite-met', 'palatal-clearance', (v) => v < 0);
  sign('neck-off', 'neck-facing-cost', (v) => v > 0);
  sign('socket-collapse', 'socket-gap-facial', (v) => v < SOCKET_GAP, {
    source: 'botticelli-2004',
    known: 'memory',
  });
  return out;
}

/** Signs of the plan gone wrong that the plan itself does not have, in the order of {@link SIGN_CODES}. */
export function newSigns(plan: Plan, wrong: Plan): MouthSign[] {
  const had = new Set(signsOf(evaluated(plan)).map(({ code, reading }) => `${code} ${reading}`));
  const found: MouthSign[] = signsOf(evaluated(wrong)).filter(
    ({ code, reading }) => !had.has(`${code} ${reading}`),
  );
  const { implant } = plan;
  const off = deviation(plan.pose, wrong.pose, totalLength(implant), implant.index).coronal.faciopalatal;
  if (off >= SEEN_SHIFT) {
    const source: Source = { source: 'fuerhauser-2015', known: 'memory' };
    found.push({ code: 'recession-shift', reading: null, value: off, unit: 'mm', ...source });
  }
  return found.sort((p, q) => SIGN_CODES.indexOf(p.code) - SIGN_CODES.indexOf(q.code));
}
