import { type ChangeEvent, useRef, useState } from 'react';
import { GENERIC_KIT } from '../core/drilling/genericKit.ts';
import type { Kit } from '../core/drilling/kit.ts';
import { drillingOf } from '../core/plan/drilling.ts';
import { kitOf, rehearsalOf } from '../core/plan/inHand.ts';
import { setKit } from '../core/plan/rehearse.ts';
import { parseKitFile, printKitFile } from '../io/kitFile.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { formatNumber } from '../words/format.ts';
import { presentFault } from '../words/presentFault.ts';
import { presentKitFault, presentKitTitle, presentToolNumbers } from '../words/presentKit.ts';
import { say } from '../words/sayDrill.ts';
import { sayTool } from '../words/sayTool.ts';
import { download, textOf } from './files.ts';

const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** Takes another kit as one undo step, or says why not. */
function useKitChange(stores: PlanStores): {
  notice: readonly string[];
  take: (kit: Kit | null) => void;
  tell: (...lines: string[]) => void;
} {
  const { document } = stores;
  const [notice, setNotice] = useState<readonly string[]>([]);
  const take = (kit: Kit | null) => {
    const change = setKit(document.getState().plan, kit);
    const title = presentKitTitle(kit ?? GENERIC_KIT);
    if (change.ok) document.edit(say('edit.kit', { kit: title }), () => change.plan);
    const lacks = (pass: number, tool: string) =>
      say('kit.lacks', { pass: count(pass + 1), tool, kit: title });
    setNotice(change.ok ? [] : [lacks(change.pass, sayTool(change.tool))]);
  };
  return { notice, take, tell: (...lines) => setNotice(lines) };
}

/** The button that opens a kit file; a file that cannot be used says why and changes nothing. */
function OpenKit({ onKit, onRefused }: { onKit: (kit: Kit) => void; onRefused: (lines: string[]) => void }) {
  const input = useRef<HTMLInputElement>(null);
  const open = async (event: ChangeEvent<HTMLInputElement>) => {
    const [file] = event.target.files ?? [];
    if (!file) return;
    const text = await textOf(file);
    // The same file may be chosen again once it has been mended.
    if (input.current) input.current.value = '';
    const refused = (fault: string) => say('kit.refused', { file: file.name, fault });
    if (text === null) return onRefused([refused(say('plans.unreadable'))]);
    const read = parseKitFile(text);
    if (read.ok) return onKit(read.kit);
    const [first, ...more] = read.faults;
    const rest = more.length > 0 ? [say('plans.refusedMore', { count: count(more.length) })] : [];
    onRefused([refused(presentFault(first)), ...rest]);
  };
  return (
    <>
      <button type="button" className="rail-word" onClick={() => input.current?.click()}>
        {say('kit.openFile')}
      </button>
      <input
        ref={input}
        type="file"
        accept=".json,application/json"
        aria-label={say('kit.openFile')}
        hidden
        onChange={(event) => void open(event)}
      />
    </>
  );
}

/** The kit of the rehearsal: what is in it, a kit of one's own from a file, and back. */
export function KitPanel({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const { notice, take, tell } = useKitChange(stores);
  const kit = kitOf(plan);
  const own = rehearsalOf(plan).kit !== null;
  const lines = [...new Set([...kit.drills, ...kit.necks].map(presentToolNumbers))];
  const faults = drillingOf(plan)?.plan.faults ?? [];
  return (
    <details className="rail-group kit">
      <summary>
        {say('kit.heading')} <span className="caption">{say(own ? 'kit.own' : 'kit.generic')}</span>
      </summary>
      {own && <p className="kit-title">{kit.title}</p>}
      <div className="rail-words">
        <OpenKit onKit={take} onRefused={(lines) => tell(...lines)} />
        <button
          type="button"
          className="rail-word"
          onClick={() => download(say('kit.fileName'), printKitFile(kit))}
        >
          {say(own ? 'kit.saveOwn' : 'kit.save')}
        </button>
        {own && (
          <button type="button" className="rail-word" onClick={() => take(null)}>
            {say('kit.back')}
          </button>
        )}
      </div>
      <div role="alert">
        {notice.map((line) => (
          <p className="kit-notice" key={line}>
            {line}
          </p>
        ))}
      </div>
      {faults.map((fault) => (
        <p className="kit-fault" key={`${fault.code}${fault.tool?.index}`}>
          {presentKitFault(fault, kit)}
        </p>
      ))}
      <ul className="kit-tools">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      {!own && <p className="rail-note">{say('kit.assumed')}</p>}
    </details>
  );
}
