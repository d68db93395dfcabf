import type { Reading } from '../measure/reading.ts';
import type { Drill, Kit, NeckCutter } from './kit.ts';
import { type PassBody, passBody, toolOf } from './passBody.ts';
import { type PassMeasureInput, passReadings } from './passReadings.ts';
import type { Pass } from './rehearsal.ts';
import { takenUp } from './takenUp.ts';

/** A pass that was made, with its tool, its body and what is read off it. */
export interface PassView {
  /** Place in the rehearsal. */
  readonly index: number;
  readonly pass: Pass;
  readonly tool: Drill | NeckCutter;
  readonly body: PassBody;
  readonly readings: readonly Reading[];
}

const kept = new WeakMap<
  Pass,
  { readonly input: PassMeasureInput; readonly view: Omit<PassView, 'index'> }
>();

const sameInput = (a: PassMeasureInput, b: PassMeasureInput): boolean =>
  a.anatomy === b.anatomy &&
  a.fixing === b.fixing &&
  a.crestMargin === b.crestMargin &&
  a.limits === b.limits &&
  a.crownTilt?.faciopalatal === b.crownTilt?.faciopalatal &&
  a.crownTilt?.mesiodistal === b.crownTilt?.mesiodistal;

function viewOf(input: PassMeasureInput, kit: Kit, pass: Pass): Omit<PassView, 'index'> | null {
  const tool = toolOf(kit, pass.tool);
  const known = kept.get(pass);
  if (known && known.view.tool === tool && sameInput(known.input, input)) return known.view;
  const body = passBody(input.anatomy.ridge, kit, pass);
  if (!tool || !body) return null;
  const view = { pass, tool, body, readings: passReadings(input, body) };
  kept.set(pass, { input, view });
  return view;
}

/** The passes that met bone, in order. A pass that is looked at again in the same place is not measured again. */
export const passViews = (input: PassMeasureInput, kit: Kit, passes: readonly Pass[]): PassView[] =>
  passes.flatMap((pass, index) => {
    const view = viewOf(input, kit, pass);
    return view ? [{ ...view, index }] : [];
  });

/** What may stand out of the pass that takes another up, mm (ours): each depth counts from its own entry on a sloping crest, so floors differ by hundredths. */
const LEDGE = 0.05;

/** For each pass the first later one, no narrower, that takes it up but for a ledge; null: none does. */
export const takersOf = (views: readonly PassView[]): (number | null)[] =>
  views.map(({ body: old }, i) => {
    const found = views.findIndex(
      ({ body: wide }, j) => j > i && wide.radius >= old.radius && takenUp(old, wide).overshoot.gap <= LEDGE,
    );
    return found < 0 ? null : found;
  });
