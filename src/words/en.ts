import { aboutWords } from './about.en.ts';
import { adviceWords } from './advice.en.ts';
import { classWords } from './class.en.ts';
import { classPageWords } from './classPage.en.ts';
import { cliWords } from './cli.en.ts';
import { crownWords } from './crown.en.ts';
import { crownPlaceWords } from './crownPlace.en.ts';
import { drillingWords } from './drilling.en.ts';
import { exercisePanelWords } from './exercisePanel.en.ts';
import { faultWords } from './faults.en.ts';
import { handWords } from './hand.en.ts';
import { handOverWords } from './handOver.en.ts';
import { keepWords } from './keep.en.ts';
import { modelWords } from './models.en.ts';
import { ownHandWords } from './ownHand.en.ts';
import { panelWords } from './panels.en.ts';
import { readingWords } from './readings.en.ts';
import { rehearseWords } from './rehearse.en.ts';
import { seatingWords } from './seating.en.ts';
import { seatPanelWords } from './seatPanel.en.ts';
import { sheetWords } from './sheet.en.ts';
import { siteWords } from './site.en.ts';
import { sourceWords } from './sources.en.ts';
import { stageWords } from './stage.en.ts';
import { strayWords } from './stray.en.ts';
import { tableWords } from './tables.en.ts';
import { teachWords } from './teach.en.ts';
import { teachPanelWords } from './teachPanel.en.ts';

/**
 * Every word a user can see, in English. A template may hold named slots, `{slot}`; `say` fills them.
 * Slots take text, never numbers: a number goes through the formatter first.
 * Keys are `place.thing`, in the order in which the page shows them.
 */
export const en = {
  'app.name': 'Ridgewright',

  'place.navigation': 'Places',
  'place.site': 'Site',
  'place.place': 'Place',
  'place.rehearse': 'Rehearse',
  'place.seat': 'Seat',
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

  'field.less': '{field}: less',
  'field.more': '{field}: more',
  'field.notANumber': '“{text}” is not a number. The value stays {kept}.',
  'field.outOfRange': '{text} is outside {least} to {most}. The value stays {kept}.',

  ...stageWords,
  ...strayWords,
  ...panelWords,
  ...handWords,
  ...adviceWords,
  ...readingWords,
  ...aboutWords,
  ...siteWords,
  ...rehearseWords,
  ...seatingWords,
  ...seatPanelWords,
  ...crownPlaceWords,
  ...sourceWords,
  ...drillingWords,
  ...faultWords,
  ...modelWords,
  ...teachWords,
  ...teachPanelWords,
  ...crownWords,
  ...classWords,
  ...classPageWords,
  ...exercisePanelWords,
  ...ownHandWords,
  ...cliWords,
  ...tableWords,
  ...handOverWords,
  ...sheetWords,
  ...keepWords,
} as const;
