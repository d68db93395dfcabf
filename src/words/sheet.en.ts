/** Words of the sheet that is printed. */
export const sheetWords = {
  'sheet.sectionLabel': 'The section through the axis, in true scale.',
  'sheet.wallsLabel':
    'The section through the axis, enlarged, with the walls as dimension lines. Shoulder to apex {length} mm.',
  'sheet.toIncisalLine': 'axis to incisal line',
  'sheet.profileLabel':
    'Both walls against depth: palatal to the left, facial to the right, limits as lines.',
  'sheet.checkBarLabel': 'A bar that is {length} mm long when printed at 100 %.',
  'sheet.rulerLabel': 'The {tool} in true scale, with the mark {stop} to stop at.',
  'sheet.pointBeyond': 'point {point}, beyond the marks',
} as const;
