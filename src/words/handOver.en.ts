/** Words of what is handed over: pictures, tables, models. */
export const handOverWords = {
  'handOver.open': 'Hand over',
  'handOver.heading': 'Files to hand over',
  'handOver.note':
    'Files stay on this machine until you pass them on. Everything in them is a simplified model made from numbers: no medical device, no surgical guide.',
  'handOver.tables': 'Tables',
  'handOver.readings': 'Readings of this plan',
  'handOver.rehearsal': 'Rehearsal, pass by pass',
  'handOver.comparison': 'Kept pose beside this plan',
  'handOver.noRehearsal': 'Nothing drilled yet.',
  'handOver.noKept': 'No pose is kept: Place, Compare.',
  'handOver.csv': 'CSV',
  'handOver.json': 'JSON',
  'handOver.asFile': '{what} as {kind}',
  'handOver.file.readings': 'ridgewright-{tooth}-readings',
  'handOver.file.rehearsal': 'ridgewright-{tooth}-rehearsal',
  'handOver.file.comparison': 'ridgewright-{tooth}-comparison',
} as const;
