import type { ToothClass } from '../../src/core/anatomy/landmarks.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import type { Plan } from '../../src/core/plan/plan.ts';

/** Where the eye stands: turned about the vertical from the facial side toward mesial, and raised, degrees. */
export interface Eye {
  readonly turn: number;
  readonly rise: number;
}

export const EYES = {
  facial: { turn: 0, rise: 0 },
  mesial: { turn: 90, rise: 0 },
  palatal: { turn: 180, rise: 0 },
  distal: { turn: -90, rise: 0 },
  incisal: { turn: 0, rise: 89 },
  oblique: { turn: 35, rise: 25 },
  behind: { turn: 150, rise: 30 },
} as const satisfies Readonly<Record<string, Eye>>;

export type EyeName = keyof typeof EYES;

/** What one picture shows. */
export type Subject =
  | { readonly kind: 'tooth'; readonly cls: ToothClass; readonly side: 'right' | 'left' }
  | { readonly kind: 'lower'; readonly cls: 'central' | 'lateral' }
  | { readonly kind: 'implant'; readonly shape: ImplantShape; readonly light?: boolean }
  /** A file of ours as another reader has it: base 64. */
  | { readonly kind: 'model'; readonly glb: string }
  | {
      readonly kind: 'site';
      readonly plan: Plan;
      /** Any of bone, gum, teeth, crown, implant, canal, bite. */
      readonly parts: readonly string[];
      readonly veiled?: boolean;
    };

export interface Cell {
  readonly subject: Subject;
  readonly eye: Eye;
  readonly caption: string;
}

export interface Sheet {
  readonly cells: readonly Cell[];
  readonly columns: number;
  readonly size: number;
}
