import { entryOf } from '../core/geometry/pose.ts';
import { leadOf } from '../core/implant/shape.ts';
import type { Drilling } from '../core/plan/drilling.ts';
import { shoulderLevel } from '../core/plan/edits.ts';
import type { Plan } from '../core/plan/plan.ts';
import { rungOf } from '../core/seating/ladder.ts';
import { formatNumber, formatQuantity, type Quantity } from './format.ts';
import { presentSideways } from './presentPasses.ts';
import { say } from './saySheet.ts';
import { sayTiltOf } from './sayStage.ts';

/** A line of the sheet: what, and what it is. */
export interface SheetLine {
  readonly key: string;
  readonly label: string;
  readonly value: string;
  readonly note: string;
}

const mm = (value: number, rest: Partial<Quantity> = {}): string =>
  formatQuantity({ value, unit: 'mm', ...rest });
const deg = (value: number, rest: Partial<Quantity> = {}): string =>
  formatQuantity({ value, unit: 'deg', ...rest });
/** A hundredth of a millimetre, where a tenth would say nothing. */
const fine = (value: number): string => mm(Math.round(100 * value) / 100, { exact: true });
const line = (key: string, label: string, value: string, note = ''): SheetLine => ({
  key,
  label,
  value,
  note,
});

function leans(plan: Plan, mesiodistal: boolean): string {
  const { number, words } = sayTiltOf(plan.pose.tilt, mesiodistal);
  return say('sheet.leans', { amount: number, way: words });
}

/** The pose in four lines: axis, entry, level of the shoulder, turn of the mark. */
export function presentPose(plan: Plan): SheetLine[] {
  const [mesiodistal, faciopalatal] = entryOf(plan.pose);
  const lateral = Math.hypot(mesiodistal, faciopalatal);
  return [
    line(
      'axis',
      say('sheet.axis'),
      say('sheet.axisIs', { faciopalatal: leans(plan, false), mesiodistal: leans(plan, true) }),
    ),
    line(
      'entry',
      say('sheet.entry'),
      presentSideways({ faciopalatal, mesiodistal, lateral }),
      say('sheet.entryNote'),
    ),
    line(
      'shoulder',
      say('sheet.shoulder'),
      say('sheet.shoulderIs', { level: mm(shoulderLevel(plan.pose), { signed: true }) }),
    ),
    line('mark', say('sheet.mark'), say('sheet.markIs', { turn: deg(plan.pose.roll, { signed: true }) })),
  ];
}

/** How the implant is to end: depth, turn, ladder, torque. */
export function presentSeatPlan({ implant, pose }: Plan, { site, chain }: Drilling): SheetLine[] {
  const rung = rungOf(implant);
  const every = implant.index === 0 ? '' : deg(360 / implant.index);
  return [
    line(
      'depth',
      say('sheet.seat.depth'),
      say('sheet.seat.depthIs', { apex: mm(chain.apex), thread: mm(chain.lastThread) }),
    ),
    line(
      'shoulder',
      say('sheet.seat.shoulder'),
      say('sheet.seat.shoulderIs', { amount: mm(site.shoulder, { signed: true }) }),
    ),
    line(
      'turn',
      say('sheet.seat.turn'),
      rung === null
        ? say('sheet.seat.round')
        : say('sheet.seat.turnIs', { turn: deg(pose.roll, { signed: true }), every }),
    ),
    line(
      'ladder',
      say('sheet.seat.ladder'),
      rung === null
        ? say('sheet.seat.lead', { lead: fine(leadOf(implant)) })
        : say('sheet.seat.ladderIs', { rung: fine(rung), every, half: fine(rung / 2) }),
    ),
    line(
      'torque',
      say('sheet.seat.torque'),
      say('sheet.seat.torqueIs', { torque: formatQuantity({ value: implant.maxTorque, unit: 'Ncm' }) }),
    ),
  ];
}

/** A number of mm as it stands in a column that says mm. */
export const bareMm = (value: number): string => formatNumber({ value, unit: 'mm' });
