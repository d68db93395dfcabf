import { useState } from 'react';
import { SpinField } from '../../../src/panels/SpinField.tsx';

/** One field with what it has committed, in order. */
export function Field() {
  const [values, setValues] = useState([0]);
  const [holds, setHolds] = useState<string[]>([]);
  return (
    <div style={{ width: 232, padding: 12 }}>
      <SpinField
        name="facial"
        value={values[values.length - 1]}
        unit="mm"
        least={-6}
        most={6}
        step={0.1}
        page={0.5}
        signed
        onCommit={(value) => setValues((before) => [...before, value])}
        onHold={(phase) => setHolds((before) => [...before, phase])}
      />
      <output id="values">{values.join(' ')}</output>
      <output id="holds">{holds.join(' ')}</output>
    </div>
  );
}
