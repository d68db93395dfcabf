/**
 * The seating in words. Sources: the core's own lists of codes (a code without words fails here), the project's rule that rounding never carries a number across
 * its limit, and the numbers of cases worked by hand beside them.
 */
import { describe, expect, it } from 'vitest';
import { SITES } from '../../src/core/anatomy/site.ts';
import type { SeatAct, WrenchScript } from '../../src/core/drilling/rehearsal.ts';
import type { Pose } from '../../src/core/geometry/pose.ts';
import { CELL } from '../../src/core/seating/contactGrid.ts';
import { FINISH_CODES, planFinish, rungsLeft } from '../../src/core/seating/finish.ts';
import { HINDRANCES } from '../../src/core/seating/hindrance.ts';
import { PLAY_CODES } from '../../src/core/seating/play.ts';
import {
  SEAT_CODES,
  SEAT_PHASES,
  type SeatSetting,
  type SeatState,
  seating,
} from '../../src/core/seating/seat.ts';
import { TORQUE_ASSUMPTIONS } from '../../src/core/seating/torque.ts';
import { en } from '../../src/words/en.ts';
import {
  presentFinish,
  presentLadder,
  presentLevel,
  presentPlay,
  presentQuestions,
  presentSeatEvent,
  presentSeatSummary,
  presentStart,
} from '../../src/words/presentSeating.ts';
import { presentAssumption, presentTorque, presentTorquePage } from '../../src/words/presentTorque.ts';
import { cylinder } from '../support/slabs.ts';

const words: Readonly<Record<string, string>> = en;
const plain = (text: string): string => text.replaceAll('\u00A0', ' ');

const UPRIGHT: Pose = {
  platform: { m: 0, f: 0, c: 0 },
  tilt: { faciopalatal: 0, mesiodistal: 0 },
  roll: 0,
};
const SCRIPT: WrenchScript = {
  points: [
    { above: 2, torque: 10 },
    { above: 0.5, torque: 30 },
    { above: 0, torque: 50 },
  ],
};
const setting = (changes: Partial<SeatSetting> = {}): SeatSetting => ({
  shape: cylinder(2, 11, { index: 2 }),
  tooth: 11,
  planned: UPRIGHT,
  wrench: SCRIPT,
  bite: 6.6,
  tolerance: null,
  highest: null,
  free: { hole: Number.NEGATIVE_INFINITY, neck: Number.NEGATIVE_INFINITY },
  play: 2,
  holds: () => true,
  ...changes,
});
const start = (roll = 0): SeatAct => ({
  kind: 'start',
  roll,
  pose: { mouth: { m: 0, f: 0 }, tilt: UPRIGHT.tilt },
});
const turn = (degrees: number, by: 'fingers' | 'wrench' = 'wrench'): SeatAct => ({
  kind: 'turn',
  by,
  degrees,
});
const reached = (s: SeatSetting, ...acts: SeatAct[]): SeatState => seating(s, acts)[acts.length];

describe('codes have their words', () => {
  it.each([
    ['seat.phase', SEAT_PHASES],
    ['seat.code', SEAT_CODES],
    ['seat.cause', HINDRANCES],
    ['seat.finish', FINISH_CODES],
    ['play', PLAY_CODES],
    ['torque.assumption', TORQUE_ASSUMPTIONS],
    ['contact.kind', Object.keys(CELL)],
  ] as const)('%s', (place, codes) => {
    for (const code of codes) expect(words[`${place}.${code}`], `${place}.${code}`).toBeTypeOf('string');
  });
});

describe('an act in words', () => {
  it('says how far and where the shoulder stands', () => {
    // Seven turns of 0.8 from 6.6.
    expect(plain(presentSeatEvent(setting(), reached(setting(), start(), turn(7 * 360))))).toBe(
      'Turned in 2520.0°: 5.6 mm deeper, the shoulder 1.0 mm above the plan.',
    );
  });

  it('stops with the maximum, the level and the reason', () => {
    const s = setting({ free: { hole: 0.35, neck: Number.NEGATIVE_INFINITY } });
    const text = plain(presentSeatEvent(s, reached(s, start(), turn(7 * 360), turn(720))));
    expect(text).toContain('the maximum of 35 N·cm is reached and the shoulder stands 0.4 mm above the plan');
    expect(text).toContain('Back out. Never force it, never settle for a wrong face.');
    expect(text).toContain('The hole is short: the apex stands on its floor. It lacks 0.3 mm');
  });

  it('leaves no slot open, whatever the code', () => {
    const seen = new Set<string>();
    const say = (s: SeatSetting, acts: SeatAct[]) => {
      for (const state of seating(s, acts)) {
        seen.add(state.code);
        expect(presentSeatEvent(s, state)).not.toMatch(/[{}]|NaN|undefined/);
        expect(presentSeatSummary(s, state)).not.toMatch(/[{}]|NaN|undefined/);
        for (const { detail } of presentQuestions(s, state)) expect(detail).not.toMatch(/[{}]|NaN|undefined/);
        expect(presentFinish(s, planFinish(s, state))).not.toMatch(/[{}]|NaN|undefined/);
        for (const line of presentLadder(s, rungsLeft(s, state))) expect(line).not.toMatch(/[{}]|NaN/);
      }
    };
    const lean = (faciopalatal: number): SeatAct => ({
      kind: 'steer',
      tilt: { faciopalatal, mesiodistal: 0 },
    });
    for (const tooth of SITES) {
      const s = setting({ tooth, wrench: { points: [{ above: 7, torque: 5 }, ...SCRIPT.points] } });
      say(s, [start(), lean(1), lean(5), turn(3000, 'fingers'), turn(9000), { kind: 'back-out' }]);
      say(s, [start(3), turn(360), turn(900, 'wrench'), turn(-90), lean(1)]);
    }
    say(setting({ wrench: null }), [start(), turn(8 * 360)]);
    say(setting({ shape: cylinder(2, 11) }), [start(), turn(7 * 360)]);
    say(setting({ holds: () => false, wrench: null }), [start(), turn(4 * 360), turn(90)]);
    expect([...seen].sort()).toEqual([...SEAT_CODES].sort());
  });

  it('keeps a level on its own side of the tolerance, and calls it the plan only within it', () => {
    expect(plain(presentLevel(0.204, 0.2))).toBe('0.204 mm above the plan');
    expect(plain(presentLevel(-0.196, 0.2))).toBe('0.196 mm below the plan');
    expect(presentLevel(0.03, 0.2)).toBe('at the planned level');
    expect(plain(presentLevel(0.03, 0.02))).toBe('0.03 mm above the plan');
  });
});

describe('the stop in words', () => {
  const s = setting();

  it('answers three questions', () => {
    const answers = presentQuestions(s, reached(s, start(), turn(7 * 360 + 30)));
    // 1 − 0.8/12 = 0.933 above; 30° past the facing, toward mesial on the right; 10 + 20 (2 − 0.9333)/1.5 = 24.2.
    expect(answers.map(({ answer }) => answer)).toEqual(['no', 'no', 'yes']);
    expect(answers.map(({ detail }) => plain(detail))).toEqual([
      '0.9 mm above the plan, within ± 0.2 mm is right',
      '30.0° off, mesially',
      '24 N·cm of 35 N·cm, 11 N·cm left',
    ]);
    expect(presentQuestions(setting({ wrench: null }), reached(s, start()))[2].question).toBe('Torque left?');
  });

  it('names the rungs and the turn that is left', () => {
    const state = reached(setting({ wrench: null }), start(), turn(7 * 360 + 30));
    const free = setting({ wrench: null });
    expect(presentLadder(free, rungsLeft(free, state)).map(plain)).toEqual([
      '0.6 mm above the plan: 150.0° more',
      '0.2 mm above the plan: 330.0° more',
      '0.2 mm below the plan: 510.0° more',
    ]);
    expect(plain(presentFinish(free, planFinish(free, state)))).toBe(
      'Best rung: the shoulder 0.2 mm above the plan. 330.0° more: 150.0° to the first facing, then one part-turn of 180.0°.',
    );
    expect(plain(presentLadder(s, rungsLeft(s, reached(s, start())))[0])).toContain('± 0.2 mm');
  });

  it('says how to start anew', () => {
    expect(plain(presentStart(s, 0.3))).toBe(
      'Set to the hole 45.0° further turned in, at the same level, the ladder stands 0.1 mm higher.',
    );
    expect(plain(presentStart(s, 0.1))).toContain('less turned in');
    expect(presentStart(s, 0.4)).toBe(words['seat.startKeep']);
    expect(presentStart(s, null)).toBe('');
  });

  it('sums the seating up', () => {
    expect(plain(presentSeatSummary(s, reached(s, start(), turn(7 * 360), turn(180))))).toBe(
      'Shoulder 0.6 mm above the plan, the neck facing, 29 N·cm of 35 N·cm on the wrench.',
    );
    const back = reached(s, start(), turn(720), { kind: 'back-out' }, start(), turn(720), turn(-90));
    expect(plain(presentSeatSummary(s, back))).toContain(
      'Loosened by 90.0° of turning back. Backed out once.',
    );
  });
});

describe('play and torque in words', () => {
  it('keeps the share of thread on its side of the bound', () => {
    const text = plain(presentPlay({ code: 'spins', shift: 0.2, tilt: 3, thread: 14.7 }));
    expect(text).toContain('Only 14.7 % of the thread');
    expect(text).toContain('less than 15 %');
  });

  it('never shows the estimate without saying that it judges nothing', () => {
    const range = { low: 4.6, high: 52 };
    const shown = presentTorque({ ...range, thread: range, side: range, assumptions: TORQUE_ASSUMPTIONS });
    expect(plain(shown.range)).toBe('5 to 52 N·cm');
    expect(shown.note).toContain('judges nothing');
  });

  it('has a page with every assumption, and the worked values of the formulas', () => {
    const page = presentTorquePage(TORQUE_ASSUMPTIONS);
    const all = page.flatMap(({ heading, text }) => [heading, ...text]).join('\n');
    expect(all).not.toMatch(/[{}]|NaN|undefined/);
    for (const code of TORQUE_ASSUMPTIONS) expect(all).toContain(presentAssumption(code));
    for (const worked of ['77.8', '75.4', '194.0', '48.9', '22.6', '11.7']) expect(all).toContain(worked);
    // Every one of the assumed numbers is on the page.
    expect(presentAssumption('pressure-by-class')).toContain('1.8 to 8');
    // 1 − 1/e = 63 %.
    expect(plain(presentAssumption('pressure-from-press'))).toContain('at 10 % of the radius it is 63 %');
  });
});
