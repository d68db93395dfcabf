import { leadOf } from '../core/implant/shape.ts';
import type { Contact } from '../core/seating/contact.ts';
import type { Finish, Rung } from '../core/seating/finish.ts';
import { rungOf } from '../core/seating/ladder.ts';
import { type Play, SPINS_BELOW } from '../core/seating/play.ts';
import {
  FINGER_TORQUE,
  questionsAt,
  type SeatSetting,
  type SeatState,
  STEER_TURNS,
  toleranceOf,
} from '../core/seating/seat.ts';
import { depthOf, partTurn, startShift, startTurn } from '../core/seating/turns.ts';
import { formatQuantity, type Quantity } from './format.ts';
import { say } from './saySeat.ts';

/** A number with its name. */
export interface SeatRow {
  readonly key: string;
  readonly label: string;
  readonly value: string;
}

/** One of the three questions of a stop. */
export interface SeatAnswer {
  readonly key: 'level' | 'facing' | 'torque';
  readonly question: string;
  /** null: no answer. */
  readonly right: boolean | null;
  readonly answer: string;
  readonly detail: string;
}

const mm = (value: number, limits: Quantity['limits'] = []) => formatQuantity({ value, unit: 'mm', limits });
const deg = (value: number, limits: Quantity['limits'] = []) =>
  formatQuantity({ value, unit: 'deg', limits });
const percent = (value: number, limits: Quantity['limits'] = []) =>
  formatQuantity({ value, unit: 'percent', limits });
const torqueText = (value: number, limits: Quantity['limits'] = []) =>
  formatQuantity({ value, unit: 'Ncm', limits });

/** Nearer than this to the plan it is at the planned level, mm: what one decimal shows as 0. */
const AT_PLAN = 0.05;

/** "0.2 mm above the plan"; the digits keep the level's side of the tolerance. */
export function presentLevel(above: number, tolerance: number): string {
  if (Math.abs(above) < Math.min(AT_PLAN, tolerance)) return say('seat.level.at');
  const amount = mm(Math.abs(above), [tolerance]);
  return say(above > 0 ? 'seat.level.above' : 'seat.level.below', { amount });
}

/** Contact of an implant with its hole, row by row. */
export function presentContact(contact: Contact): SeatRow[] {
  const { widest } = contact;
  const row = (key: string, label: string, value: string): SeatRow => ({ key, label, value });
  return [
    row('thread', say('contact.thread'), percent(contact.percent, [0, 100])),
    row('within', say('contact.threadWithin'), percent(contact.percentWithin, [SPINS_BELOW])),
    row('press', say('contact.press'), mm(contact.meanPress)),
    row(
      'widest',
      say('contact.widest'),
      widest
        ? say('contact.widestAt', {
            gap: mm(widest.gap),
            station: mm(widest.station),
            azimuth: deg(widest.azimuth > 180 ? 360 - widest.azimuth : widest.azimuth),
            way: say(widest.azimuth > 180 ? 'way.distally' : 'way.mesially'),
          })
        : say('contact.noGap'),
    ),
    row('open', say('contact.open'), percent(contact.openPercent, [0])),
    row('room', say('contact.room'), formatQuantity({ value: contact.gapVolume, unit: 'mm3' })),
  ];
}

export function presentPlay({ code, shift, tilt, thread }: Play): string {
  if (code === 'held') return say('play.held');
  const held = percent(thread, [SPINS_BELOW]);
  if (code === 'spins') return say('play.spins', { thread: held, bound: percent(SPINS_BELOW) });
  return say('play.loose', { shift: mm(shift, [0]), tilt: deg(tilt, [0]), thread: held });
}

/** What the last act came to, with the reason where it was stopped. */
export function presentSeatEvent(setting: SeatSetting, state: SeatState): string {
  const { code, cause } = state;
  const level = presentLevel(state.above, toleranceOf(setting));
  const degrees = deg(Math.abs(state.made));
  switch (code) {
    case 'started':
    case 'seated':
      return say(`seat.code.${code}`, { level });
    case 'turned':
      return say('seat.code.turned', {
        degrees,
        depth: mm(depthOf(leadOf(setting.shape), state.made)),
        level,
      });
    case 'fingers-at-limit':
      return say('seat.code.fingers-at-limit', { torque: torqueText(FINGER_TORQUE) });
    case 'stop-back-out': {
      const stop = say('seat.code.stop-back-out', { max: torqueText(setting.shape.maxTorque), level });
      return cause ? `${stop} ${presentCause(cause)}` : stop;
    }
    case 'loosened':
      return say('seat.code.loosened', { degrees, level, loosened: deg(state.loosened) });
    case 'steer-held':
      return say('seat.code.steer-held', { play: deg(setting.play) });
    case 'steer-too-late':
      return say('seat.code.steer-too-late', {
        turns: formatQuantity({ value: STEER_TURNS, unit: 'count' }),
      });
    default:
      return say(`seat.code.${code}`);
  }
}

export function presentCause({ reason, press, short, uncut }: NonNullable<SeatState['cause']>): string {
  if (reason === 'hole-short') return say('seat.cause.hole-short', { short: mm(short, [0]) });
  if (reason === 'neck-uncut')
    return say('seat.cause.neck-uncut', { press: mm(press, [0]), uncut: mm(uncut, [0]) });
  return say('seat.cause.hard-bone');
}

const yesNo = (right: boolean): string => say(right ? 'seat.answer.yes' : 'seat.answer.no');

/** The three questions of a stop, side by side. */
export function presentQuestions(setting: SeatSetting, state: SeatState): readonly SeatAnswer[] {
  const { level, facing, torque } = questionsAt(setting, state);
  const faces =
    facing.off === null
      ? say('seat.answer.round')
      : facing.right
        ? say('seat.answer.faces')
        : say('seat.answer.askew', {
            amount: deg(Math.abs(facing.off)),
            way: say(facing.off < 0 ? 'way.distally' : 'way.mesially'),
          });
  const { maxTorque } = setting.shape;
  const wrench =
    torque.reading === null || torque.left === null
      ? say('seat.answer.noScript')
      : say('seat.answer.torque', {
          reading: torqueText(torque.reading, [maxTorque]),
          max: torqueText(maxTorque),
          left: torqueText(torque.left, [0]),
        });
  return [
    {
      key: 'level',
      question: say('seat.question.level'),
      right: level.right,
      answer: yesNo(level.right),
      detail: say('seat.answer.level', {
        level: presentLevel(level.off, level.tolerance),
        tolerance: formatQuantity({
          value: Math.round(100 * level.tolerance) / 100,
          unit: 'mm',
          exact: true,
        }),
      }),
    },
    {
      key: 'facing',
      question: say('seat.question.facing'),
      right: facing.right,
      answer: yesNo(facing.right),
      detail: faces,
    },
    {
      key: 'torque',
      question: say('seat.question.torque'),
      right: torque.reading === null ? null : torque.right,
      answer: torque.reading === null ? say('seat.answer.unknown') : yesNo(torque.right),
      detail: wrench,
    },
  ];
}

/** The rungs left, highest first; one line that says so where there are none to name. */
export function presentLadder(setting: SeatSetting, rungs: readonly Rung[]): string[] {
  const rung = rungOf(setting.shape);
  if (rung === null) return [say('seat.ladder.round')];
  if (rungs.length === 0) {
    const half = formatQuantity({ value: Math.round(50 * rung) / 100, unit: 'mm', exact: true });
    return [say('seat.ladder.unknown', { half })];
  }
  return rungs.map(({ above, degrees, blocked }) => {
    const level = presentLevel(above, toleranceOf(setting));
    if (degrees === 0) return say('seat.ladder.rungHere', { level });
    return say(blocked ? 'seat.ladder.rungBlocked' : 'seat.ladder.rung', { level, degrees: deg(degrees) });
  });
}

/** How to come to an end from here. */
export function presentFinish(setting: SeatSetting, { code, best }: Finish): string {
  if (code === 'unknown' || !best) return say('seat.finish.unknown');
  const level = presentLevel(best.above, toleranceOf(setting));
  const degrees = deg(best.degrees);
  if (code === 'here' || code === 'too-deep') return say(`seat.finish.${code}`, { level });
  if (code === 'blocked') {
    const limit = torqueText(setting.shape.maxTorque);
    return say('seat.finish.blocked', { level, degrees, limit });
  }
  return say('seat.finish.turn-in', { level, degrees, parts: partsText(setting, best) });
}

function partsText(setting: SeatSetting, { degrees, parts }: Rung): string {
  const part = partTurn(setting.shape);
  if (!part) return say('seat.finish.noParts');
  const count = formatQuantity({ value: parts, unit: 'count' });
  const many = parts === 1 ? say('seat.parts.one') : say('seat.parts.more', { count });
  const first = degrees - parts * part.degrees;
  const each = deg(part.degrees);
  if (parts === 0) return say('seat.finish.first', { degrees: deg(first) });
  if (Math.abs(first) < AT_PLAN) return say('seat.finish.onlyParts', { parts: many, part: each });
  return say('seat.finish.firstAndParts', { degrees: deg(first), parts: many, part: each });
}

/** How to start anew so that a rung meets the plan, where one was known before; '' where none was. */
export function presentStart({ shape }: SeatSetting, lastRung: number | null): string {
  if (lastRung === null || shape.index === 0) return '';
  const by = startTurn(shape, lastRung);
  const shift = mm(Math.abs(startShift(leadOf(shape), by)));
  const degrees = deg(Math.abs(by));
  if (Math.abs(by) < AT_PLAN) return say('seat.startKeep');
  return say(by > 0 ? 'seat.start' : 'seat.startBack', { degrees, shift });
}

/** The seating in one or two sentences. */
export function presentSeatSummary(setting: SeatSetting, state: SeatState): string {
  const { level, facing, torque } = questionsAt(setting, state);
  const { maxTorque } = setting.shape;
  const faces =
    facing.off === null
      ? say('seat.summary.round')
      : facing.right
        ? say('seat.summary.faces')
        : say('seat.summary.askew', { amount: deg(Math.abs(facing.off)) });
  const wrench =
    torque.reading === null
      ? say('seat.summary.noTorque')
      : say('seat.summary.torque', {
          reading: torqueText(torque.reading, [maxTorque]),
          max: torqueText(maxTorque),
        });
  const out = [
    say('seat.summary', { level: presentLevel(level.off, level.tolerance), facing: faces, torque: wrench }),
  ];
  if (state.loosened > 0) out.push(say('seat.summary.loosened', { degrees: deg(state.loosened) }));
  if (state.backOuts > 0) {
    const count = formatQuantity({ value: state.backOuts, unit: 'count' });
    const times = state.backOuts === 1 ? say('seat.times.one') : say('seat.times.more', { count });
    out.push(say('seat.summary.backOuts', { times }));
  }
  return out.join(' ');
}
