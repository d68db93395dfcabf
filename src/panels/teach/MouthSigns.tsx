import type { Cost } from '../../core/teaching/cost.ts';
import { formatNumber } from '../../words/format.ts';
import { presentSigns } from '../../words/presentTeach.ts';
import { say } from '../../words/sayTeach.ts';

const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** What it would look like in the mouth, and who has observed it: each source once, by its number. */
export function MouthSigns({ cost }: { cost: Cost }) {
  const signs = presentSigns(cost);
  const sources = [...new Set(signs.map(({ by }) => by).filter((by) => by !== ''))];
  return (
    <div className="cost-part">
      <h3>{say('sign.heading')}</h3>
      <ul className="signs">
        {signs.map(({ text, by }) => (
          <li key={text}>
            {text}
            {by !== '' && <sup>{count(1 + sources.indexOf(by))}</sup>}
          </li>
        ))}
      </ul>
      <p className="sign-sources">
        {sources.map((by, i) => (
          <span key={by}>
            <sup>{count(i + 1)}</sup>
            {by}{' '}
          </span>
        ))}
      </p>
    </div>
  );
}
