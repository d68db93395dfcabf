import { describe, expect, it } from 'vitest';
import { LOOKS, lookBetween } from '../../src/scene/show/looks.ts';
import { Unfolding } from '../../src/scene/show/unfolding.ts';
import { PATIENT_STEPS } from '../../src/words/presentPatient.ts';

const frame = { left: 400, top: 60, width: 560, height: 540 };
const start = () => new Unfolding({ look: LOOKS.bone, frame });

/** Frames from one time to another, 50 ms apart. */
function frames(drawing: Unfolding, from: number, to: number): void {
  for (let time = from; time <= to; time += 50) drawing.goOn(time);
}

describe('the patient’s drawing unfolds', () => {
  it('from one step to the next, and then rests', () => {
    const drawing = start();
    drawing.unfold({ look: LOOKS.implant, frame: { ...frame, left: 500 } }, false);
    expect(drawing.leaf.look).toEqual(LOOKS.bone);
    let out = Number.POSITIVE_INFINITY;
    for (let time = 1000; drawing.moving; time += 50) {
      drawing.goOn(time);
      expect(drawing.leaf.look.implantOut).toBeLessThanOrEqual(out);
      out = drawing.leaf.look.implantOut;
    }
    expect(drawing.leaf).toEqual({ look: LOOKS.implant, frame: { ...frame, left: 500 } });
    expect(drawing.rest).toBe(1);
  });

  it('begins with its first frame, and is not swallowed by a slow one', () => {
    const drawing = start();
    drawing.unfold({ look: LOOKS.implant, frame }, false);
    drawing.goOn(1e6);
    expect(drawing.leaf.look).toEqual(LOOKS.bone);
    let seen = 0;
    for (let time = 1e6 + 5000; drawing.moving; time += 5000) {
      drawing.goOn(time);
      if (drawing.moving) seen++;
    }
    expect(seen).toBeGreaterThan(3);
    expect(drawing.leaf.look).toEqual(LOOKS.implant);
  });

  it('at once where motion is not wanted', () => {
    const drawing = start();
    drawing.unfold({ look: LOOKS.tooth, frame }, true);
    expect(drawing.moving).toBe(false);
    expect(drawing.leaf.look).toEqual(LOOKS.tooth);
  });

  it('from where it is, when it is called back half way', () => {
    const drawing = start();
    drawing.unfold({ look: LOOKS.implant, frame }, false);
    frames(drawing, 0, 1000);
    const { implantOut } = drawing.leaf.look;
    expect(implantOut).toBeGreaterThan(0);
    expect(implantOut).toBeLessThan(LOOKS.bone.implantOut);
    drawing.unfold({ look: LOOKS.bone, frame }, false);
    expect(drawing.leaf.look.implantOut).toBe(implantOut);
  });

  it('keeps a hand from turning it round, and forgets the hand at the next step', () => {
    const drawing = start();
    drawing.turnBy(500, -500);
    const { azimuth, elevation } = drawing.leaf.look;
    expect(azimuth).toBeLessThan(90);
    expect(elevation).toBeGreaterThan(-45);
    drawing.unfold({ look: LOOKS.implant, frame }, false);
    expect(drawing.leaf.look.azimuth).toBe(azimuth);
    frames(drawing, 0, 2000);
    expect(drawing.leaf.look).toEqual(LOOKS.implant);
  });

  it('shows the implant only when gum and bone have cleared, and the crown last', () => {
    for (let w = 0; w <= 1; w += 0.05) {
      const look = lookBetween(LOOKS.gap, LOOKS.implant, w);
      if (look.implant > 0) expect(look.gumVeil).toBeGreaterThan(0.5);
      expect(look.crown).toBe(0);
    }
    const first = (key: 'implant' | 'crown') => PATIENT_STEPS.findIndex((step) => LOOKS[step][key] === 1);
    expect(first('implant')).toBeLessThan(first('crown'));
    for (const step of PATIENT_STEPS) expect(lookBetween(LOOKS.gap, LOOKS[step], 1)).toEqual(LOOKS[step]);
  });
});
