import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './scan.ts';

/** The headers of the sample for hosts, by what they are for, as they stand in the file. */
export function sampleHeaders(): Map<string, Record<string, string>> {
  const sections = new Map<string, Record<string, string>>();
  let section: Record<string, string> = {};
  for (const line of readFileSync(join(ROOT, 'assets/hosting/headers.txt'), 'utf8').split('\n')) {
    const heading = /^\[(.*)\]$/.exec(line)?.[1];
    const [, name, value] = /^([\w-]+): (.*)$/.exec(line) ?? [];
    if (heading) {
      section = {};
      sections.set(heading.split(':')[0], section);
    } else if (name && !line.startsWith('#')) section[name] = value;
  }
  return sections;
}
