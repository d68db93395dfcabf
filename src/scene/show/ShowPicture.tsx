import { type RefObject, useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import type { Language } from '../../words/language.ts';
import type { PatientStep } from '../../words/presentPatient.ts';
import { type LabelSheet, Labels } from './ShowLabels.tsx';
import type { TakePicture } from './ShowStage.tsx';

/** Size of a picture on paper, px: 56 mm at about 300 to the inch. */
const SIZE = { width: 700, height: 570 } as const;

interface ShowPictureProps {
  step: PatientStep;
  language: Language;
  pictures: RefObject<TakePicture | null>;
}

/** A step as it looks on paper. It is drawn when the page is about to be printed, in that same moment, so that it shows the plan as it is then. */
export function ShowPicture({ step, language, pictures }: ShowPictureProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [sheet, setSheet] = useState<LabelSheet | null>(null);

  useEffect(() => {
    const draw = () =>
      pictures.current?.(step, SIZE, (drawn, words) => {
        const paper = canvas.current?.getContext('2d');
        paper?.clearRect(0, 0, SIZE.width, SIZE.height);
        paper?.drawImage(drawn, 0, 0, SIZE.width, SIZE.height);
        flushSync(() => setSheet(words));
      });
    window.addEventListener('beforeprint', draw);
    return () => window.removeEventListener('beforeprint', draw);
  }, [step, pictures]);

  return (
    <div className="show-picture" data-picture={sheet ? step : undefined}>
      <canvas ref={canvas} {...SIZE} />
      {sheet && <Labels sheet={sheet} language={language} size={SIZE} />}
    </div>
  );
}
