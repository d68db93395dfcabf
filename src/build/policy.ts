/** What the built page may load and run. The build writes it into the page; the dev server does not. A host may send it as a header too: `assets/hosting/headers.txt`. */
const SERVED = {
  'default-src': "'self'",
  'script-src': "'self' 'wasm-unsafe-eval'",
  'style-src': "'self'",
  'img-src': "'self' blob: data:",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'object-src': "'none'",
  'base-uri': "'none'",
  'form-action': "'none'",
  'require-trusted-types-for': "'script'",
  'trusted-types': 'ridgewright',
};

const written = (policy: Readonly<Record<string, string>>): string =>
  Object.entries(policy)
    .map(([directive, sources]) => `${directive} ${sources}`)
    .join('; ');

export const SERVED_POLICY = written(SERVED);

/** The policy of the single file: its own script and style by their hashes, its own fonts and pictures, and nothing else from anywhere. */
export const portablePolicy = (script: string, style: string): string =>
  written({
    'default-src': "'none'",
    'script-src': script,
    'style-src': style,
    'img-src': 'blob: data:',
    'font-src': 'data:',
    'base-uri': "'none'",
    'form-action': "'none'",
    'require-trusted-types-for': "'script'",
    'trusted-types': 'ridgewright',
  });
