import { type ReactNode, useRef } from 'react';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import type { Freedom } from './freedoms.ts';
import { SpinField } from './SpinField.tsx';

interface FreedomFieldProps {
  stores: PlanStores;
  freedom: Freedom;
  name: string;
  label: ReactNode;
}

/** Fields show two decimals at most: a drag ends anywhere, and what was set as 0.3 reads 0.3. */
const tidy = (value: number): number => Math.round(value * 100) / 100 + 0;

/** A degree of freedom as a field: every commit is one named undo step, a held key is one gesture. */
export function FreedomField({ stores, freedom, name, label }: FreedomFieldProps) {
  const { document, session, live } = stores;
  const value = useSelected(document, ({ plan }) => tidy(freedom.read(plan)));
  const before = useRef(value);
  const step = { mm: { step: 0.1, page: 0.5 }, deg: { step: 1, page: 5 } }[freedom.unit as 'mm' | 'deg'];

  const onCommit = (next: number) => {
    const { pivot } = session.getState();
    if (document.getState().gesture) document.updateGesture((plan) => freedom.write(plan, next, pivot));
    else document.edit(freedom.say(next - value), (plan) => freedom.write(plan, next, pivot));
  };

  const onHold = (phase: 'begin' | 'end') => {
    if (phase === 'begin') {
      before.current = value;
      document.beginGesture(freedom.say(0));
    } else document.endGesture(freedom.say(freedom.read(document.getState().plan) - before.current));
  };

  return (
    <div className="freedom" data-freedom={freedom.id}>
      <SpinField
        name={name}
        label={label}
        value={value}
        unit={freedom.unit}
        least={freedom.least}
        most={freedom.most}
        {...step}
        signed
        onCommit={onCommit}
        onFocused={(focused) => live.set({ hover: focused ? freedom.id : null })}
        onHold={onHold}
      />
    </div>
  );
}
