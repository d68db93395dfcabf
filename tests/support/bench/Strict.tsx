import { useEffect, useState } from 'react';

let runs = 0;

/** Counts how often an effect runs for one mount: twice in strict mode, else once. */
export function Strict() {
  const [seen, setSeen] = useState(0);
  useEffect(() => {
    runs += 1;
    setSeen(runs);
  }, []);
  return <output>{seen}</output>;
}
