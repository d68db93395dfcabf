import { type ReactNode, useId } from 'react';
import { say } from '../words/sayFile.ts';

/** A kind of file that something comes as. */
export interface OfferedKind {
  readonly key: string;
  /** What the button says: `CSV`. */
  readonly kind: string;
  readonly onTake: () => void;
}

interface OfferProps {
  /** What is offered. */
  what: string;
  kinds: readonly OfferedKind[];
  /** Why it is not to be had now; '' where it is. */
  lacking?: string;
  children?: ReactNode;
}

/** One thing to hand over with a button for each kind of file; where there is none, the reason in its place. */
export function Offer({ what, kinds, lacking = '', children }: OfferProps) {
  return (
    <li className="offer">
      <span>
        {what}
        {lacking !== '' && <small>{lacking}</small>}
        {children}
      </span>
      {lacking === '' &&
        kinds.map(({ key, kind, onTake }) => (
          <button
            key={key}
            type="button"
            aria-label={say('handOver.asFile', { what, kind })}
            onClick={onTake}
          >
            {kind}
          </button>
        ))}
    </li>
  );
}

/** Offers of one sort under a heading. */
export function OfferGroup({ heading, children }: { heading: string; children: ReactNode }) {
  const id = useId();
  return (
    <>
      <h2 className="caption" id={id}>
        {heading}
      </h2>
      <ul aria-labelledby={id}>{children}</ul>
    </>
  );
}
