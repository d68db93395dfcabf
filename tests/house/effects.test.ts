import { describe, expect, it } from 'vitest';
import { effectsGivingBack, sources } from '../support/scan.ts';

const page = (text: string) => ({ path: 'src/panels/Page.tsx', text });

describe('an effect gives back nothing but what clears it up', () => {
  it('never what an element answered', () => {
    const files = sources('src/scene', 'src/panels', 'src/app');
    expect(files.length).toBeGreaterThan(0);
    expect(files.flatMap(effectsGivingBack)).toEqual([]);
  });

  it.each([
    'useEffect(() => box.current?.scrollIntoView(), [asked]);',
    'useLayoutEffect(() => document.body.scrollTo(0, 0), []);',
  ])('catches %s', (text) => {
    expect(effectsGivingBack(page(text))).toHaveLength(1);
  });

  it.each([
    'useEffect(() => { box.current?.scrollIntoView(); }, [asked]);',
    'useEffect(() => () => latest.current(), []);',
    'useEffect(() => follow(found), [found]);',
  ])('lets pass %s', (text) => {
    expect(effectsGivingBack(page(text))).toEqual([]);
  });
});
