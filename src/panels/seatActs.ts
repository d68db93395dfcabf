import { type ImplantShape, leadOf } from '../core/implant/shape.ts';
import { backOut, type SeatNow, turnIn } from '../core/plan/seat.ts';
import { depthOf, partTurn } from '../core/seating/turns.ts';
import type { PlanStores } from '../state/stores.ts';
import { formatQuantity } from '../words/format.ts';
import { say } from '../words/saySeat.ts';

/** What a part of the seating's rail gets: the plan's own stores, and the seating as it stands. */
export interface SeatPartProps {
  readonly stores: PlanStores;
  readonly now: SeatNow;
}

/** Whether the implant stands in the hole, its thread begun. */
export const isStarted = ({ state: { phase } }: SeatNow): boolean =>
  phase !== 'before' && phase !== 'backed-out';

export type TurnedBy = 'fingers' | 'wrench';

/** A turn the hand can make. Degrees. */
export interface TurnChoice {
  readonly key: 'whole' | 'half' | 'quarter' | 'part';
  readonly degrees: number;
}

/** Whole, half and quarter turns, and the part-turn of the neck unless it is one of them: then it takes that one's place. */
export function turnChoices(shape: ImplantShape): TurnChoice[] {
  const part = partTurn(shape);
  const plain: TurnChoice[] = [
    { key: 'whole', degrees: 360 },
    { key: 'half', degrees: 180 },
    { key: 'quarter', degrees: 90 },
  ];
  if (!part) return plain;
  return [...plain.filter(({ degrees }) => degrees !== part.degrees), { key: 'part', degrees: part.degrees }];
}

export const sayDegrees = (degrees: number): string => formatQuantity({ value: degrees, unit: 'deg' });

/** How deep a turn goes, to hundredths: a part-turn is a tenth of a millimetre. */
export const sayTurnDepth = (shape: ImplantShape, degrees: number): string =>
  formatQuantity({
    value: Math.round(100 * depthOf(leadOf(shape), degrees)) / 100,
    unit: 'mm',
    exact: true,
  });

/** One turn, one undo step; backward if negative. */
export function makeTurn({ document }: PlanStores, by: TurnedBy, degrees: number): void {
  const size = { degrees: sayDegrees(Math.abs(degrees)) };
  const label =
    degrees < 0
      ? say('edit.turnBack', size)
      : say(by === 'fingers' ? 'edit.turnInFingers' : 'edit.turnInWrench', size);
  document.edit(label, (plan) => turnIn(plan, by, degrees));
}

export const makeBackOut = ({ document }: PlanStores): void => document.edit(say('edit.backOut'), backOut);
