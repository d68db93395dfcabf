import { useState } from 'react';
import { POSE } from '../../../src/app/places/pose.tsx';
import { type Parts, Shell } from '../../../src/app/Shell.tsx';

const PLACES: readonly (keyof Parts)[] = ['sentence', 'rail', 'stage', 'section', 'profile', 'readings'];

let mended = false;

function Part({ place, broken }: { place: string; broken: boolean }) {
  const [count, setCount] = useState(0);
  if (broken && !mended) throw new Error(`${place} is broken on purpose`);
  return (
    <button type="button" data-part={place} onClick={() => setCount(count + 1)}>
      {count}
    </button>
  );
}

/** The sheet with a counter in every place, one of which throws until a `mend` event. */
export function Broken({ part }: { part: string }) {
  document.documentElement.addEventListener('mend', () => {
    mended = true;
  });
  const parts: Parts = {};
  for (const place of PLACES) parts[place] = <Part place={place} broken={place === part} />;
  return <Shell place="place" header={null} title={{}} names={POSE.names} parts={parts} />;
}
