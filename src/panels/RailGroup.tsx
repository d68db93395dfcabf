import { type ReactNode, useId } from 'react';

interface RailGroupProps {
  heading: string;
  note: ReactNode;
  children: ReactNode;
}

/** Fields under one heading. */
export function RailGroup({ heading, note, children }: RailGroupProps) {
  const id = useId();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset's legend cannot share a line with the note
    <div className="rail-group" role="group" aria-labelledby={id}>
      <div className="rail-heading">
        <h3 id={id}>{heading}</h3>
        <span className="caption">{note}</span>
      </div>
      {children}
    </div>
  );
}
