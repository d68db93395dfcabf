import type { Evaluation } from '../core/plan/evaluate.ts';
import { shortFingerprint } from '../core/plan/fingerprint.ts';
import { wallProfile } from '../paper/profile.ts';
import { CHECK_BAR, checkBar } from '../paper/rulers.ts';
import { bareSection, walledSection } from '../paper/section.ts';
import { signed } from '../paper/signed.ts';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/saySheet.ts';
import { svg } from './svg.ts';
import { PROGRAM_VERSION } from './version.ts';

/** Drawings of a plan that come as files: the section in true scale, the section enlarged with its walls, the wall profile. */
export const PLAN_DRAWINGS = ['section', 'walls', 'profile'] as const;
export type PlanDrawing = (typeof PLAN_DRAWINGS)[number];

/** How much larger than the model each is drawn. */
export const DRAWN_AT: Readonly<Record<PlanDrawing, number>> = { section: 1, walls: 3, profile: 5 };

const count = (value: number): string => formatNumber({ value, unit: 'count' });

function drawingsOf(evaluation: Evaluation, kind: PlanDrawing) {
  const scale = DRAWN_AT[kind];
  if (kind === 'section') return [bareSection(evaluation, scale), checkBar()];
  return [kind === 'walls' ? walledSection(evaluation, scale) : wallProfile(evaluation, scale)];
}

/** A drawing of a plan as an SVG file: its size in mm, so that it prints in the scale it names; of which plan and by which program; what it is not. */
export function drawingSvg(evaluation: Evaluation, kind: PlanDrawing): string {
  const { plan } = evaluation;
  const tooth = count(plan.site.tooth);
  const heading = say(`drawing.file.${kind}`, { tooth, scale: count(DRAWN_AT[kind]) });
  const made = say('drawing.file.made', {
    program: say('sheet.program', { name: say('app.name'), version: PROGRAM_VERSION }),
    plan: say('sheet.fingerprint', { fingerprint: shortFingerprint(plan) }),
  });
  const bar = kind === 'section' ? [say('sheet.checkBarLabel', { length: count(CHECK_BAR) })] : [];
  return svg(signed(drawingsOf(evaluation, kind), heading, [...bar, made, say('drawing.file.caution')]));
}
