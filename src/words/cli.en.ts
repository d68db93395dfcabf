/** Words of the command line. */
export const cliWords = {
  'cli.usage':
    'Usage: npm run --silent measure -- FILE… [--json] [--judge]\n\nPrints every reading of each plan file, and its rehearsal where passes were made.\n  --json   an array: per file its title and its readings; where passes were\n           made also the rehearsal: verdict, passes with their faults, readings of the hole\n  --judge  exit 1 if a reading of the plan is beyond its limit\nExit: 0 done, 1 something is beyond and --judge was given, 2 usage, 3 unusable file, 4 a fault of this program.',
  'cli.noFile': 'No file was named.',
  'cli.ownFault': 'A fault of this program: {detail}',
  'cli.migrated': '{file}: read as an older file version ({steps}).',
  'cli.columns.reading': 'Reading',
  'cli.columns.value': 'Value',
  'cli.columns.limit': 'Limit',
  'cli.columns.status': 'Status',
  'cli.columns.note': 'Note',
  'cli.named': '{name}: {value}',
  'cli.removed': 'Bone removed by all passes, at most: {taken}',
  'cli.caution':
    'In this model. A rehearsal on a simplified model made from numbers; not a medical device. Check everything against the patient.',
} as const;
