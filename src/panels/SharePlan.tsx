import { useId, useMemo, useRef, useState } from 'react';
import { addressWith } from '../io/link/address.ts';
import { planHash } from '../io/link/planLink.ts';
import { type QrCode, QUIET, qrCode, qrPath } from '../io/qr.ts';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/say.ts';

const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** Shares of a code that may be damaged, by its error level (ISO/IEC 18004), percent. */
const SPARE = { L: 7, M: 15, Q: 25, H: 30 } as const;

/** The link of a page that others can open, or what is to stand after `#` of such a page. */
function useLink(stores: PlanStores): { text: string; served: boolean } | null {
  const plan = usePlan(stores);
  return useMemo(() => {
    const hash = planHash(plan);
    const served = window.location.protocol !== 'file:';
    if (hash === null) return null;
    return { text: served ? addressWith(window.location.href, hash) : `#${hash}`, served };
  }, [plan]);
}

function Code({ code }: { code: QrCode }) {
  const [large, setLarge] = useState(false);
  const side = code.modules.length;
  const box = side + 2 * QUIET;
  const label = say('link.code', { side: count(side), side2: count(side) });
  return (
    <div className="share-code" data-large={large || undefined}>
      <svg
        viewBox={`0 0 ${box} ${box}`}
        role="img"
        aria-label={label}
        data-version={code.version}
        data-level={code.level}
        shapeRendering="crispEdges"
      >
        <rect width={box} height={box} className="share-quiet" />
        <path d={qrPath(code)} />
      </svg>
      <div>
        <p className="caption">
          {say('link.codeNote', { share: formatQuantity({ value: SPARE[code.level], unit: 'percent' }) })}
        </p>
        <button type="button" aria-pressed={large} onClick={() => setLarge(!large)}>
          {say(large ? 'link.small' : 'link.large')}
        </button>
      </div>
    </div>
  );
}

/** A field with the link, to be copied by a press or by hand. */
function Address({ text }: { text: string }) {
  const id = useId();
  const field = useRef<HTMLTextAreaElement>(null);
  const [copied, setCopied] = useState<{ text: string; well: boolean } | null>(null);
  const copy = () => {
    field.current?.select();
    // A page that is not served securely has no clipboard.
    const clipboard: Clipboard | undefined = navigator.clipboard;
    const written = clipboard?.writeText(text) ?? Promise.reject(new Error('no clipboard'));
    written.then(
      () => setCopied({ text, well: true }),
      () => setCopied({ text, well: false }),
    );
  };
  return (
    <div className="share-address">
      <label htmlFor={id}>{say('link.address')}</label>
      <span className="caption">{say('link.length', { count: count(text.length) })}</span>
      <textarea
        id={id}
        ref={field}
        readOnly
        rows={4}
        value={text}
        onFocus={(event) => event.target.select()}
      />
      <button type="button" className="plans-file" onClick={copy}>
        {say('link.copy')}
      </button>
      <span role="status" className="caption">
        {copied?.text === text && say(copied.well ? 'link.copied' : 'link.notCopied')}
      </span>
    </div>
  );
}

/** The plan as a link and as a code. */
export default function SharePlan({ stores }: { stores: PlanStores }) {
  const link = useLink(stores);
  const code = useMemo(() => (link?.served ? qrCode(link.text) : null), [link]);
  return (
    <>
      <h2>{say('link.heading')}</h2>
      {link ? <Address text={link.text} /> : <p>{say('link.tooLong')}</p>}
      {code && <Code code={code} />}
      {link?.served && !code && <p>{say('link.noCode')}</p>}
      {link && !link.served && <p>{say('link.fromFile')}</p>}
      <p className="caption">{say('link.note')}</p>
    </>
  );
}
