import type { Cost } from '../../core/teaching/cost.ts';
import { presentSigns } from '../../words/presentTeach.ts';
import { say } from '../../words/say.ts';

/** What it would look like in the mouth, and who has observed it. */
export function MouthSigns({ cost }: { cost: Cost }) {
  return (
    <div className="cost-part">
      <h3>{say('sign.heading')}</h3>
      <ul className="signs">
        {presentSigns(cost).map(({ text, by }) => (
          <li key={text}>
            {text} <small>{by}</small>
          </li>
        ))}
      </ul>
    </div>
  );
}
