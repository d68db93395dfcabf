import { type ReactNode, Suspense } from 'react';
import type { Place } from '../state/session.ts';
import { say } from '../words/say.ts';
import { Boundary } from './Boundary.tsx';
import type { PartNames } from './places/place.ts';
import { TitleBlock, type TitleBlockProps } from './TitleBlock.tsx';

/** The parts of the page that come and go with the work, each behind a boundary of its own. */
export interface Parts {
  sentence?: ReactNode;
  rail?: ReactNode;
  stage?: ReactNode;
  section?: ReactNode;
  profile?: ReactNode;
  readings?: ReactNode;
}

interface Frame {
  place: Place;
  header: ReactNode;
  title: TitleBlockProps;
  /** What stands on paper only, under the rest. */
  printed?: ReactNode;
  /** The stage has failed and draws nothing until it is tried again. */
  onStageFault?: () => void;
}

/** A place at the table, part by part, or a page of its own. */
export type Content = { names: PartNames; layout?: string; parts: Parts } | { page: ReactNode };

export type ShellProps = Frame & Content;

interface PanelProps {
  place: keyof Parts;
  name: string;
  /** Whether the heading is drawn; it is always there for a screen reader. */
  heading?: boolean;
  onFault?: () => void;
  children: ReactNode;
}

function Panel({ place, name, heading = false, onFault, children }: PanelProps) {
  return (
    <section className={`panel panel-${place}`} aria-label={name}>
      <h2 className={heading ? undefined : 'unseen'}>{name}</h2>
      <Boundary name={name} onFault={onFault}>
        {children}
      </Boundary>
    </section>
  );
}

/** The parts of the table: pose rail, stage, section, the drawing beside it, readings. */
function Table({
  names,
  parts,
  onStageFault,
}: {
  names: PartNames;
  parts: Parts;
  onStageFault?: () => void;
}) {
  return (
    <>
      <Panel place="rail" name={names.rail}>
        {parts.rail}
      </Panel>
      <Panel place="stage" name={say('panel.stage')} onFault={onStageFault}>
        {parts.stage}
      </Panel>
      <div className="right">
        <div className="pair">
          <Panel place="section" name={say('panel.section')}>
            {parts.section}
          </Panel>
          <Panel place="profile" name={names.profile} heading>
            {parts.profile}
          </Panel>
        </div>
        <Panel place="readings" name={names.readings}>
          {parts.readings}
        </Panel>
      </div>
    </>
  );
}

/** The sheet: header, then sentence and table of the place, or its own page, then the title block. */
export function Shell({ place, header, title, printed, onStageFault, ...content }: ShellProps) {
  if (!('names' in content))
    return (
      <div className="sheet" data-page={place}>
        {header}
        <main className="page">
          <Boundary key={place} name={say(`place.${place}`)}>
            <Suspense fallback={<p className="calm">{say('stage.loading')}</p>}>{content.page}</Suspense>
          </Boundary>
        </main>
        <TitleBlock {...title} />
      </div>
    );
  const { names, parts, layout } = content;
  return (
    <div className="sheet" data-layout={layout}>
      {header}
      <section className="sentence" aria-label={say('sentence.label')}>
        <Boundary name={say('sentence.label')}>{parts.sentence}</Boundary>
      </section>
      <main className="place" data-place={place}>
        <Table names={names} parts={parts} onStageFault={onStageFault} />
      </main>
      {printed}
      <TitleBlock {...title} />
    </div>
  );
}
