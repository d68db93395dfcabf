import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';
import { portablePolicy } from './policy.ts';

const hashOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** Text that may stand inside a script element: nothing in it ends the element or begins a comment (HTML, 4.12.1.3). */
const scriptSafe = (code: string): string =>
  code.replaceAll(/<(?=\/script|script)/gi, '\\x3C').replaceAll('<!--', '\\x3C!--');

/** Puts the one script and the one style sheet into the page, with a policy that names them by their hashes and lets nothing else in. */
export function oneFile(): Plugin {
  return {
    name: 'one-file',
    apply: 'build',
    enforce: 'post',
    generateBundle(_, bundle) {
      const parts = Object.values(bundle);
      const scripts = parts.filter((part) => part.type === 'chunk');
      const assets = parts.filter((part) => part.type === 'asset');
      const page = assets.find(({ fileName }) => fileName.endsWith('.html'));
      const styles = assets.filter(({ fileName }) => fileName.endsWith('.css'));
      const icons = assets.filter(({ fileName }) => fileName.endsWith('.svg'));
      const rest = assets.filter((asset) => ![page, ...styles, ...icons].includes(asset));
      if (!page || scripts.length !== 1 || styles.length !== 1 || rest.length > 0)
        this.error(`not one script and one style sheet: ${parts.map(({ fileName }) => fileName).join(', ')}`);
      const script = scriptSafe(scripts[0].code.trim());
      const style = String(styles[0].source).trim();
      const policy = portablePolicy(hashOf(script), hashOf(style));
      page.source = String(page.source)
        .replace(/\s*<script[^>]*><\/script>/, '')
        .replace(/\s*<link rel="stylesheet"[^>]*>/, '')
        .replace(
          '<head>',
          () => `<head>\n    <meta http-equiv="Content-Security-Policy" content="${policy}">`,
        )
        .replace('</head>', () => `<style>${style}</style>\n  </head>`)
        .replace('</body>', () => `<script>${script}</script>\n  </body>`);
      for (const { fileName, source } of icons) {
        const data = `data:image/svg+xml;base64,${Buffer.from(source).toString('base64')}`;
        page.source = page.source.replaceAll(`/${fileName}`, data);
      }
      for (const part of [...scripts, ...styles, ...icons]) delete bundle[part.fileName];
    },
  };
}
