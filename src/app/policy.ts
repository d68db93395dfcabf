/** The part of the browser's Trusted Types that is used; not every browser has them. */
interface TrustedTypes {
  createPolicy: (name: string, rules: { createScriptURL: (address: string) => string }) => ScriptPolicy;
}

export interface ScriptPolicy {
  createScriptURL: (address: string) => string;
}

/** An address of this page's own origin, or a TypeError. */
function sameOrigin(address: string): string {
  const url = new URL(address, document.baseURI);
  if (url.origin !== window.location.origin) throw new TypeError(`not of this origin: ${url.origin}`);
  return url.href;
}

/** The one policy of the page, `ridgewright`: scripts and workers come from this origin and nowhere else. */
export function scriptPolicy(): ScriptPolicy {
  const rules = { createScriptURL: sameOrigin };
  const { trustedTypes } = window as Window & { trustedTypes?: TrustedTypes };
  return trustedTypes?.createPolicy('ridgewright', rules) ?? rules;
}
