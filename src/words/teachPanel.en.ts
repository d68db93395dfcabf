/** Words of the place where a class is taught. */
export const teachPanelWords = {
  'panel.teach': 'Bad trajectories',
  'panel.amount': 'Amount',
  'panel.cost': 'What it costs',

  'teach.rooms': 'What is taught',
  'teach.room.trajectories': 'Trajectories',

  'teach.group.entry': 'Entry',
  'teach.group.axis': 'Axis',
  'teach.group.neighbours': 'Neighbours',
  'teach.group.depth': 'Depth',
  'teach.group.drill': 'Drill and neck',

  'teach.why.canal-elsewhere': 'no canal near this site',
  'teach.why.round-neck': 'a round neck has no front',
  'teach.why.healed-site': 'the ridge has healed',
  'teach.why.nothing-to-drill': 'nothing to drill here',
  'teach.why.already-so': 'the plan stands so',

  'teach.hide': 'Hide the answer',
  'teach.answer': 'Show the answer',
  'teach.ask': 'What does it cost here?',
  'teach.covered': 'The section is covered until the answer is shown.',
  'teach.pointer': 'Pointer',

  'teach.good': 'the plan',
  'teach.wrong': 'this trajectory',

  'teach.less': 'Less of it',
  'teach.more': 'More of it',
  'teach.play': 'Play',
  'teach.stop': 'Stop',
  'teach.back': 'Back',
  'teach.working': 'Working it out.',

  'teach.all': 'All {count} readings',
  'teach.fewer': 'The worst only',
  'teach.showBack': 'Show it',
} as const;
