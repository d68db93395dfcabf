import { type RefObject, useLayoutEffect, useState } from 'react';
import { px } from '../../marks/path.ts';
import type { Language } from '../../words/language.ts';
import { sayPatient } from '../../words/sayPatient.ts';
import type { PlacedLabel } from './labels.ts';

/** The words and lines of one frame; px of the picture. */
export interface LabelSheet {
  readonly labels: readonly PlacedLabel[];
  /** Outline of what is to come, path data, and how much of it is there yet. */
  readonly outline: string;
  readonly share: number;
  /** How far the words have appeared, 0 to 1. */
  readonly words: number;
}

interface LabelsProps {
  sheet: LabelSheet;
  language: Language;
  /** Size of the picture, px, where it is shown at another size. */
  size?: { readonly width: number; readonly height: number };
}

const ANCHOR = { left: 'end', right: 'start', middle: 'middle' } as const;

/** Words on leader lines. The text beside the drawing tells the same, so a screen reader passes them by. */
export function Labels({ sheet: { labels, outline, share, words }, language, size }: LabelsProps) {
  return (
    <svg className="show-labels" viewBox={size && `0 0 ${size.width} ${size.height}`} aria-hidden="true">
      <path className="show-outline" d={outline} opacity={share} />
      {labels.map(({ id, at, side, from, to }) => (
        <g key={id} className="show-label" opacity={words}>
          <path d={`M${px(from.x)} ${px(from.y)}L${px(to.x)} ${px(to.y)}`} />
          <circle cx={px(to.x)} cy={px(to.y)} r="4" />
          <text x={px(at.x)} y={px(at.y)} dy="0.33em" textAnchor={ANCHOR[side]}>
            {sayPatient(language, `patient.label.${id}`)}
          </text>
        </g>
      ))}
    </svg>
  );
}

interface LabelLayerProps {
  language: Language;
  /** Filled with the door through which the frames' words come. */
  door: RefObject<((sheet: LabelSheet) => void) | null>;
}

/** The words over the canvas, drawn again with every frame and nothing else with them. */
export function LabelLayer({ language, door }: LabelLayerProps) {
  const [sheet, setSheet] = useState<LabelSheet | null>(null);
  useLayoutEffect(() => {
    door.current = setSheet;
    return () => {
      door.current = null;
    };
  }, [door]);
  return sheet && <Labels sheet={sheet} language={language} />;
}
