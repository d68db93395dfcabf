import { memo, type ReactNode, useMemo, useRef } from 'react';
import { drillingOf } from '../../core/plan/drilling.ts';
import { PAPERS } from '../../state/session.ts';
import type { PlanStores } from '../../state/stores.ts';
import { useEvaluation } from '../../state/usePlan.ts';
import { useReport } from '../../state/useReport.ts';
import { useSelected } from '../../state/useSelected.ts';
import { say } from '../../words/saySheet.ts';
import { readingGroups } from '../readingGroups.ts';
import { SheetCrown } from './SheetCrown.tsx';
import { SheetDrills, SheetRuler } from './SheetDrills.tsx';
import { SheetFoot } from './SheetFoot.tsx';
import { count, SheetHead } from './SheetHead.tsx';
import { type SheetPicture, SheetPictures } from './SheetPictures.tsx';
import { JudgedReadings, OtherReadings, SheetSources, sortedReadings, sourcesOf } from './SheetReadings.tsx';
import { rehearsalBlocks, SheetRehearsal } from './SheetRehearsal.tsx';
import { SheetSection } from './SheetSection.tsx';
import { usePages } from './usePages.ts';
import './sheet.css';

export interface SheetPageProps {
  stores: PlanStores;
  /** Pictures of the model; null while they are being taken; none where there is no 3D. */
  pictures: readonly SheetPicture[] | null;
}

/** A block of the sheet; the last knows which page it has come to stand on. */
type Block = (sheet: number, sheets: number) => ReactNode;

/** What stands on the sheet, in order. The pictures come later than the rest, which is not made anew for them. */
function useBlocks({ stores, pictures }: SheetPageProps): Block[] {
  const evaluation = useEvaluation(stores);
  const { report } = useReport(stores);
  const { before, after } = useMemo(() => {
    const { plan, readings } = evaluation;
    const drilling = drillingOf(plan);
    const sorted = sortedReadings(readingGroups(plan.fixing), readings);
    const sources = sourcesOf(sorted);
    const parts = Array.from({ length: rehearsalBlocks(plan, report) }, (_, part) => part);
    const first = [
      <SheetSection key="section" evaluation={evaluation} />,
      <SheetDrills key="drills" plan={plan} drilling={drilling} />,
      <SheetRuler key="ruler" plan={plan} drilling={drilling} />,
      ...sorted.judged.map((group, i) => (
        <JudgedReadings key={group.heading} group={group} sources={sources} first={i === 0} />
      )),
      <SheetSources key="sources" sources={sources} />,
      <OtherReadings key="others" sorted={sorted} />,
      <SheetCrown key="crown" evaluation={evaluation} />,
    ];
    const last = report
      ? parts.map((part) => <SheetRehearsal key={part} plan={plan} report={report} part={part} />)
      : [];
    const foot: Block = (sheet, sheets) => <SheetFoot plan={plan} sheet={sheet} sheets={sheets} />;
    return {
      before: first.map(
        (block): Block =>
          () =>
            block,
      ),
      after: [
        ...last.map(
          (block): Block =>
            () =>
              block,
        ),
        foot,
      ],
    };
  }, [evaluation, report]);
  return useMemo(
    () => [...before, () => <SheetPictures pictures={pictures} />, ...after],
    [before, after, pictures],
  );
}

/** The choice of paper and the way to the printer; on screen only. */
function SheetTools({ stores, pictures }: SheetPageProps) {
  const { session } = stores;
  const paper = useSelected(session, (state) => state.paper);
  return (
    <div className="paper-tools">
      {/* biome-ignore lint/a11y/useSemanticElements: words in a line, no form */}
      <div className="paper-choice" role="group" aria-label={say('sheet.tools')}>
        {PAPERS.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={paper === one}
            onClick={() => session.set({ paper: one })}
          >
            {say(`sheet.paper.${one}`)}
          </button>
        ))}
      </div>
      <button
        type="button"
        className="paper-print"
        disabled={pictures === null}
        onClick={() => window.print()}
      >
        {say('sheet.print')}
      </button>
      <p role="status">{pictures === null ? say('sheet.picturesComing') : say('sheet.printNote')}</p>
    </div>
  );
}

/** The sheet that goes to the chair: shown as the paper it is printed on, as many pages as it takes. */
export const SheetPage = memo(function SheetPage(props: SheetPageProps) {
  const { stores } = props;
  const root = useRef<HTMLDivElement>(null);
  const { plan } = useEvaluation(stores);
  const paper = useSelected(stores.session, (state) => state.paper);
  const guessing = useSelected(stores.live, (state) => state.guessing);
  const blocks = useBlocks(props);
  const pages = usePages(root, blocks, paper);
  const sheets = 1 + Math.max(0, ...pages);
  if (guessing) return <p className="calm">{say('guess.hidden')}</p>;
  return (
    <div className="paper-desk">
      <SheetTools {...props} />
      {/* biome-ignore lint/a11y/useSemanticElements: pages of one sheet */}
      <div className="paper-pages" ref={root} role="group" aria-label={say('sheet.pages')}>
        {Array.from({ length: sheets }, (_, page) => (
          <article
            // biome-ignore lint/suspicious/noArrayIndexKey: a page is its number
            key={page}
            className="paper-page"
            data-paper={paper}
            aria-label={say('sheet.page', { sheet: count(page + 1), sheets: count(sheets) })}
          >
            <div className="paper-frame">
              <SheetHead plan={plan} sheet={page + 1} sheets={sheets} />
              <div className="paper-room" data-room>
                {blocks.map(
                  (block, i) =>
                    pages[i] === page && (
                      // biome-ignore lint/suspicious/noArrayIndexKey: blocks keep their order
                      <div key={i} className="paper-block" data-block={i}>
                        {block(page + 1, sheets)}
                      </div>
                    ),
                )}
              </div>
            </div>
          </article>
        ))}
      </div>
    </div>
  );
});
