import { formatQuantity, type Unit } from './format.ts';
import { say } from './say.ts';

/** Smaller than this (mm or degrees) is no movement. */
const NOTHING = 0.005;

/** The size of a change, two decimals at most: a drag ends anywhere. */
const amount = (value: number, unit: Unit): string =>
  formatQuantity({ value: Math.round(Math.abs(value) * 100) / 100, unit, exact: true });

const towardFace = (value: number): string => say(value < 0 ? 'way.palatally' : 'way.facially');
const towardMidline = (value: number): string => say(value < 0 ? 'way.distally' : 'way.mesially');

function both(what: string, mesial: number, facial: number, unit: Unit): string {
  const parts = [
    { size: mesial, way: towardMidline(mesial) },
    { size: facial, way: towardFace(facial) },
  ].filter(({ size }) => Math.abs(size) >= NOTHING);
  const [first, second] = parts.map(({ size, way }) => ({ amount: amount(size, unit), way }));
  if (!first) return what;
  if (!second) return say('edit.by', { what, ...first });
  return say('edit.byBoth', { what, ...first, amount2: second.amount, way2: second.way });
}

/** Names of undo steps: `shift 0.2 mm palatally`. mm, + mesially and + facially. */
export const sayShift = (mesial: number, facial: number): string =>
  both(say('edit.shift'), mesial, facial, 'mm');

/** `tilt 1.0° facially`: degrees, + the crown end mesially and facially. */
export const sayTilt = (mesiodistal: number, faciopalatal: number): string =>
  both(say('edit.tilt'), mesiodistal, faciopalatal, 'deg');

/** `advance 0.3 mm` toward the apex, or `draw back 0.3 mm`; mm, + toward the apex. */
export const sayAdvance = (distance: number): string =>
  Math.abs(distance) < NOTHING
    ? say('edit.advance')
    : say(distance < 0 ? 'edit.withdrawBy' : 'edit.advanceBy', { amount: amount(distance, 'mm') });

/** `turn 10.0° mesially`: degrees, + carries the mark from facial toward mesial. */
export const sayTurn = (by: number): string =>
  Math.abs(by) < NOTHING
    ? say('edit.turn')
    : say('edit.by', { what: say('edit.turn'), amount: amount(by, 'deg'), way: towardMidline(by) });
