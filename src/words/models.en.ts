/** Words of the solid models: what they are, in what files, and why one is not offered. */
export const modelWords = {
  'models.title': 'Models to print',
  'models.purpose':
    'A practice model made from numbers, for the bench and the lesson. It is no surgical guide, and nothing made from it is.',
  'models.header': 'Ridgewright: practice model made from numbers, mm. Not a surgical guide.',
  'models.caution':
    'A practice model made from numbers by Ridgewright, for the bench and the lesson, in millimetres. Not a surgical guide, not a medical device, not a reading of a patient’s scan.',
  'models.ridge': 'Ridge with its neighbours, whole',
  'models.drilled': 'Ridge with its neighbours, drilled as far as rehearsed',
  'models.planned': 'Ridge with its neighbours, with the planned hole',
  'models.implant': 'Implant as a dummy, with its threads',
  'models.plain': 'Implant as a dummy, plain to the thread crests',
  'models.at': '{model}, site {tooth}',
  'models.building': 'Being made and looked at.',
  'models.figures': '{x} × {y} × {z}, {volume}, {triangles} triangles',
  'models.checked': 'Closed and outward.',
  'models.leftOut.one': 'One piece or closed cavity too small to print was left out.',
  'models.leftOut.many': '{count} pieces or closed cavities too small to print were left out.',
  'models.stl': 'STL',
  'models.3mf': '3MF',
  'models.glb': 'GLB',
  'models.save': '{model} as {format}',
  'models.noWorker':
    'This copy of the program makes no models. The one that is served or installed does, and so does the command line.',
  'models.failed': 'It could not be made. Everything else goes on, and the plan is untouched.',
  'models.fault.empty': 'Not offered: nothing is left of it.',
  'models.fault.not-finite': 'Not offered: some of its points are no numbers.',
  'models.fault.open': 'Not offered: its surface is not closed ({count} edges).',
  'models.fault.inward': 'Not offered: part of its surface is turned inward.',
  'models.fault.no-passes': 'Not offered: no pass has met bone yet.',
  'models.fault.no-hole': 'Not offered: the planned axis meets no bone, or the kit has no drill for it.',
} as const;
