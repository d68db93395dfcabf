import type { ReactNode } from 'react';
import { say } from '../words/say.ts';

export interface TitleBlockProps {
  layers?: ReactNode;
  /** How the stage is drawn, to be chosen. */
  drawing?: ReactNode;
  scenario?: ReactNode;
  sheet?: ReactNode;
}

interface CellProps {
  heading: string;
  children: ReactNode;
}

function Cell({ heading, children }: CellProps) {
  return (
    <div className="title-cell">
      <p className="caption">{heading}</p>
      {children}
    </div>
  );
}

/** The foot of the sheet, as on an engineer's drawing: the caution first, always there. */
export function TitleBlock({ layers, drawing, scenario, sheet }: TitleBlockProps) {
  return (
    <footer className="title-block">
      <Cell heading={say('title.caution')}>
        <p>{say('title.cautionText')}</p>
      </Cell>
      <Cell heading={say('title.layers')}>{layers}</Cell>
      <Cell heading={say('title.scale')}>
        <div className="title-line">
          <p>{say('title.scaleText')}</p>
          {drawing}
        </div>
      </Cell>
      <Cell heading={say('title.scenario')}>{scenario}</Cell>
      <Cell heading={say('title.sheet')}>{sheet}</Cell>
    </footer>
  );
}
