import { describe, expect, it } from 'vitest';
import { literalWords, sources, uses } from '../support/scan.ts';

const page = (text: string) => ({ path: 'src/panels/Page.tsx', text });

describe('all words come from the catalogue, all numbers from the formatter', () => {
  it('finds no literal words in the page', () => {
    const files = sources('src/marks', 'src/panels', 'src/scene', 'src/app');
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap(literalWords)).toEqual([]);
  });

  it('finds no number made text outside src/words', () => {
    const files = sources('src').filter(({ path }) => !path.startsWith('src/words/'));
    const makers = ['toFixed', 'toPrecision', 'toExponential', 'toLocaleString', 'Intl'];
    expect(files.flatMap((file) => uses(file, makers))).toEqual([]);
  });

  it.each([
    'const a = <p>Facial wall</p>;',
    'const a = <p>{"Facial wall"}</p>;',
    'const a = <p>{near ? "near" : null}</p>;',
    'const a = <p>{near && `near $' + '{x}`}</p>;',
    'const a = <p>{x + " mm"}</p>;',
    'const a = <button aria-label="Undo" />;',
    'const a = <input placeholder={"0.0 mm"} />;',
    'const a = <svg><title>Section</title></svg>;',
  ])('catches %s', (text) => {
    expect(literalWords(page(text))).toHaveLength(1);
  });

  it.each([
    'const a = <p className="words">{say("panel.retry")}</p>;',
    'const a = <p>{near === "near" ? <Glyph kind="near" /> : null} · − +</p>;',
    'const a = <button aria-label={say("history.undo")} type="button" />;',
  ])('lets pass %s', (text) => {
    expect(literalWords(page(text))).toEqual([]);
  });

  it('catches a number made text', () => {
    expect(
      uses(page('const a = x.toFixed(1) + new Intl.NumberFormat().format(y);'), ['toFixed', 'Intl']),
    ).toHaveLength(2);
  });
});

describe('the core has no clock, no chance and no surroundings', () => {
  const surroundings = [
    'Date',
    'performance',
    'Math.random',
    'crypto',
    'setTimeout',
    'console',
    'globalThis',
    'process',
  ];

  it('finds none of them in src/core and src/words', () => {
    expect(sources('src/core', 'src/words').flatMap((file) => uses(file, surroundings))).toEqual([]);
  });

  it.each(['Math.random()', 'Date.now()', 'new Date()', 'performance.now()'])('catches %s', (text) => {
    expect(uses({ path: 'src/core/a.ts', text }, surroundings)).not.toEqual([]);
  });

  it('knows a property of that name from the global', () => {
    expect(
      uses(
        {
          path: 'src/core/a.ts',
          text: 'const a = { process: 1 }; a.process2;',
        },
        surroundings,
      ),
    ).toEqual([]);
  });
});
