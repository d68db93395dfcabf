import { aboutWords } from './about.en.ts';
import { adviceWords } from './advice.en.ts';
import { keepWords } from './keep.en.ts';
import { panelWords } from './panels.en.ts';
import { readingWords } from './readings.en.ts';
import { sourceWords } from './sources.en.ts';
import { stageWords } from './stage.en.ts';
import { unitWords } from './units.en.ts';

/** What the page says before any place but the first is gone to. */
export const shellWords = {
  'app.name': 'Ridgewright',

  'place.navigation': 'Places',
  'place.site': 'Site',
  'place.place': 'Place',
  'place.rehearse': 'Rehearse',
  'place.seat': 'Seat',
  'place.crown': 'Crown',
  'place.show': 'Show',
  'place.teach': 'Teach',
  'place.sheet': 'Sheet',

  'header.fullScreen': 'Full screen',

  'history.undo': 'Undo',
  'history.redo': 'Redo',
  'history.step': '{name}: {step}',
  'history.undoStep': 'Undo {step}',
  'history.redoStep': 'Redo {step}',

  'sentence.label': 'Summary',

  'panel.pose': 'Pose',
  'panel.site': 'Site',
  'panel.rehearse': 'Rehearsal',
  'panel.seat': 'Seating',
  'panel.stage': 'Model',
  'panel.section': 'Section through the axis',
  'panel.profile': 'Wall profile',
  'panel.readings': 'Readings',
  'panel.failed': '{panel} could not be drawn. Everything else goes on, and the plan is untouched.',
  'panel.retry': 'Try again',

  'stage.label': 'Model of the ridge and the implant',
  'stage.loading': 'Setting up the model.',
  'stage.noGraphics':
    'This browser draws no 3D. The section, the wall profile and the readings say the same in two dimensions.',

  'title.caution': 'Caution',
  'title.cautionText':
    'A rehearsal and a lesson on a simplified model made from numbers. Not a medical device, not a navigation aid, not a reading of a patient’s scan. Check everything against the patient.',
  'title.layers': 'Layers: press a word',
  'title.scale': 'Units, drawing',
  'title.scaleText': 'mm, degrees',
  'title.drawing': 'How the model is drawn',
  'title.drawing.auto': 'to suit',
  'title.drawing.full': 'in full',
  'title.drawing.light': 'lightly',
  'title.scenario': 'Scenario',
  'title.sheet': 'Sheet',

  'field.less': '{field}: less',
  'field.more': '{field}: more',
  'field.notANumber': '“{text}” is not a number. The value stays {kept}.',
  'field.outOfRange': '{text} is outside {least} to {most}. The value stays {kept}.',

  'handOver.open': 'Hand over',
  'handOver.heading': 'Files to hand over',

  'stray.open': 'How a hand would stray',
  'stray.opening': 'A moment.',
  'guess.hidden': 'The numbers and the section are covered until you have guessed.',
  'teach.covered': 'The section is covered until the answer is shown.',
  'exercise.covered': 'Hidden for this exercise.',
  'exercise.notHere': 'Not while the exercise is on the table.',

  ...unitWords,
  ...stageWords,
  ...panelWords,
  ...adviceWords,
  ...readingWords,
  ...aboutWords,
  ...sourceWords,
  ...keepWords,
} as const;
