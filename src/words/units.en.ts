/** Signs of the units. */
export const unitWords = {
  'unit.mm': 'mm',
  'unit.deg': '°',
  'unit.percent': '%',
  'unit.mm2': 'mm²',
  'unit.mm3': 'mm³',
  'unit.Ncm': 'N·cm',
  'unit.rpm': 'rpm',
  'unit.s': 's',
  'unit.count': '',
  'unit.ratio': '',
} as const;
