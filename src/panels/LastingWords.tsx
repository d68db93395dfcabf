import { useEffect, useState } from 'react';
import { askLasting, isLasting } from '../io/keep/lasting.ts';
import { say } from '../words/say.ts';

/** What is kept on this machine and for how long; the browser is asked to spare it only on a press. */
export function LastingWords() {
  const [lasting, setLasting] = useState<boolean | null>(null);
  const [asked, setAsked] = useState(false);
  useEffect(() => {
    let here = true;
    void isLasting().then((answer) => here && setLasting(answer));
    return () => {
      here = false;
    };
  }, []);
  const ask = async () => {
    setLasting(await askLasting());
    setAsked(true);
  };
  return (
    <>
      <p className="caption">{say('keep.note')}</p>
      {lasting === true && <p className="caption">{say('keep.lasting')}</p>}
      {lasting === false &&
        (asked ? (
          <p className="caption">{say('keep.declined')}</p>
        ) : (
          <button type="button" className="plans-ask" onClick={() => void ask()}>
            {say('keep.ask')}
          </button>
        ))}
    </>
  );
}
