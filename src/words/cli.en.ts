/** Words of the command line. */
export const cliWords = {
  'cli.usage':
    'Usage: {call} COMMAND …\n\n  measure FILE…               every reading of each plan\n  compare FIRST SECOND        how far apart two plans are\n  export FILE --to FORMAT     models, drawings, tables\n  migrate FILE                a plan of an older version as one of today’s\n  mark EXERCISE ATTEMPT…      a class: attempts against the teacher’s plan\n\n  COMMAND --help says more; --version prints the version.\nExit: 0 done, 1 something is beyond and --judge was given, 2 usage, 3 unusable file, 4 a fault of this program.',
  'cli.usage.measure':
    'Usage: {call} FILE… [--json] [--judge]\n\nPrints every reading of each plan file, and its rehearsal where passes were made.\n  --json   an array: per file its title and its readings; where passes were\n           made also the rehearsal: verdict, passes with their faults, readings of the hole\n  --judge  exit 1 if a reading of the plan is beyond its limit\nExit: 0 done, 1 something is beyond and --judge was given, 2 usage, 3 unusable file, 4 a fault of this program.',
  'cli.usage.compare':
    'Usage: {call} FIRST SECOND [--json | --csv] [--out PATH]\n\nPrints how far the implant of the second plan stands from that of the first (platform, apex, depth, angle),\nthen every reading of both. The two plans are of one site.\n  --json      as JSON\n  --csv       as comma-separated values\n  --out PATH  into a file; else to stdout\nExit: 0 done, 2 usage, 3 unusable file, 4 a fault of this program.',
  'cli.usage.export':
    'Usage: {call} FILE --to FORMAT [--what WHAT] [--out PATH]\n\nWrites a plan as a file for another program.\n  --to stl, 3mf, glb  a solid model to print (mm; GLB in metres): practice model from numbers, no surgical guide\n       --what ridge     the ridge with its neighbours, whole (else this)\n              drilled   the same, drilled as far as rehearsed\n              planned   the same, with the planned hole\n              implant   the implant as a dummy\n              plain     the same, plain to the thread crests\n  --to svg            a drawing, true to the scale it names\n       --what section   through the axis, 1 : 1, with a bar to check the print by (else this)\n              walls     the same enlarged, with its walls\n              profile   the wall profile\n  --to csv, json      a table\n       --what readings  every reading (else this)\n              rehearsal pass by pass\n  --out PATH          into a file; else to stdout\nExit: 0 done, 2 usage, 3 unusable file, 4 a fault of this program.',
  'cli.usage.migrate':
    'Usage: {call} FILE [--out PATH]\n\nPrints a plan file of any released version as one of today’s; which steps it took goes to stderr.\n  --out PATH  into a file; else to stdout\nExit: 0 done, 2 usage, 3 unusable file, 4 a fault of this program.',
  'cli.usage.mark':
    'Usage: {call} EXERCISE ATTEMPT… [--json | --csv] [--out PATH]\n\nMarks attempt files, or all .json files of a folder, against the teacher’s file of an exercise.\n  --json      measures, limits broken, statistics of the class, published spreads\n  --csv       a row for every file\n  --out PATH  into a file; else to stdout\nA file that cannot be read, or that is of another exercise, is one line of the report and stops nothing.\nExit: 0 done, 2 usage, 3 unusable exercise, 4 a fault of this program.',
  'cli.noCommand': 'No command was named.',
  'cli.unknownCommand': '“{word}” is no command.',
  'cli.noFile': 'No file was named.',
  'cli.tooFew': 'One file more is needed.',
  'cli.tooMany': '“{file}” is one file too many.',
  'cli.noFormat': 'No format was named: --to.',
  'cli.oneOf': '{option}: “{given}” is none of {allowed}.',
  'cli.jsonOrCsv': 'Either --json or --csv.',
  'cli.nameOut': 'This is no text for a terminal: name a file with --out.',
  'cli.unwritable': '{file} cannot be written.',
  'cli.ownFault': 'A fault of this program: {detail}',
  'cli.migrated': '{file}: read as an older file version ({steps}).',
  'cli.current': '{file}: already of version {version}.',
  'cli.otherTooth': '{first} and {second} are plans of different teeth: their implants cannot be compared.',
  'cli.otherSite':
    '{first} and {second} have different numbers of the site: the implants are compared as if they stood in one.',
  'cli.otherImplant':
    '{first} and {second} have different implants: the apex is compared at the length of the second.',
  'cli.columns.reading': 'Reading',
  'cli.columns.value': 'Value',
  'cli.columns.limit': 'Limit',
  'cli.columns.status': 'Status',
  'cli.columns.note': 'Note',
  'cli.named': '{name}: {value}',
  'cli.judged': '{value}, {status}',
  'cli.planInFile': '{title} ({file})',
  'cli.removed': 'Bone removed by all passes, at most: {taken}',
  'cli.caution':
    'In this model. A rehearsal on a simplified model made from numbers; not a medical device. Check everything against the patient.',
} as const;
