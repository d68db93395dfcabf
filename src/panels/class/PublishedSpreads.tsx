import { publishedSpreads } from '../../words/presentMark.ts';
import { say } from '../../words/sayTeach.ts';

/** Published spreads, to stand beside a class or a hand, and what they are not. */
export function PublishedSpreads() {
  return (
    <section className="class-list">
      <h3>{say('published.heading')}</h3>
      <ul className="published">
        {publishedSpreads().map(({ id, group, values, by }) => (
          <li key={id}>
            <b>{group}</b> <span>{values}</span> <small>{by}</small>
          </li>
        ))}
      </ul>
      <p className="class-note">{say('published.mouse')}</p>
    </section>
  );
}
