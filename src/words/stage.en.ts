/** Words over the stage: views, handles, captions. */
export const stageWords = {
  'stage.views': 'Views',
  'stage.view.mesial': 'from mesial',
  'stage.view.distal': 'from distal',
  'stage.view.facial': 'facial',
  'stage.view.palatal': 'palatal',
  'stage.view.incisal': 'incisal',
  'stage.view.axis': 'along the axis',
  'stage.inMouth': 'as in the mouth',
  'stage.letterFacial': 'f',
  'stage.letterMesial': 'm',
  'stage.incisalLine': 'incisal line',
  'stage.scaleBar': '{length} mm',
  'stage.cut': 'cut through the axis',
  'stage.whole': 'not cut',
  'stage.translucent': 'bone seen through',
} as const;
