/** The sample of headers for a host. The browser tests of the page without a network are served with them. */
import { expect, it } from 'vitest';
import { SERVED_POLICY } from '../../src/build/policy.ts';
import { sampleHeaders } from '../support/hosting.ts';

it('sends the page’s own policy, and what only a header can say', () => {
  const every = sampleHeaders().get('every file') ?? {};
  // Source: the W3C's Content Security Policy Level 3, 3.3: frame-ancestors is not heard in a meta element.
  expect(every['Content-Security-Policy']).toBe(`${SERVED_POLICY}; frame-ancestors 'none'`);
  expect(every['X-Content-Type-Options']).toBe('nosniff');
});

it('lets only what is named by its content be kept for long', () => {
  const headers = sampleHeaders();
  expect(headers.get('assets/')?.['Cache-Control']).toContain('immutable');
  expect(headers.get('all else')?.['Cache-Control']).toBe('no-cache');
});
