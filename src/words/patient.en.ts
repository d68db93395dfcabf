/**
 * Words of the patient's page in English, for a reader of school grade 8 or below. What they say of treatment is
 * general knowledge, nothing of this plan: each group carries where it is from. "Common practice, no source" is
 * what textbooks and leaflets agree on, written from memory. No message holds a figure.
 */
export const patientWords = {
  'patient.page': 'For the patient',
  'patient.language': 'Which language',
  'patient.language.en': 'English',
  'patient.language.de': 'Deutsch',
  'patient.language.es': 'Español',
  'patient.draft': 'A draft, not yet read by a native speaker.',

  'patient.tooth.11': 'Upper right: the first tooth from the middle',
  'patient.tooth.12': 'Upper right: the second tooth from the middle',
  'patient.tooth.13': 'Upper right: the third tooth from the middle',
  'patient.tooth.14': 'Upper right: the fourth tooth from the middle',
  'patient.tooth.21': 'Upper left: the first tooth from the middle',
  'patient.tooth.22': 'Upper left: the second tooth from the middle',
  'patient.tooth.23': 'Upper left: the third tooth from the middle',
  'patient.tooth.24': 'Upper left: the fourth tooth from the middle',

  'patient.steps': 'Steps',
  'patient.gap.name': 'the gap',
  'patient.bone.name': 'the bone',
  'patient.implant.name': 'the implant',
  'patient.healing.name': 'a time of rest',
  'patient.tooth.name': 'the new tooth',
  'patient.choices.name': 'your choice',

  // What and why. Common practice, no source.
  'patient.gap.title': 'One tooth is missing.',
  'patient.gap.titleSocket': 'One tooth cannot be kept.',
  'patient.gap.what': 'You are looking at the upper front teeth. In one place there is gum, and no tooth.',
  'patient.gap.whatSocket':
    'You are looking at the upper front teeth. The one that cannot be kept is drawn as if it were out.',
  'patient.gap.why':
    'A gap can make it hard to bite and to speak. In time, the teeth beside it may lean in. And many people mind how it looks.',

  // Bone is lost after a tooth: `reference-values.md` 2 (Tan 2012, Schropp 2003, both from memory). The rest: common practice, no source.
  'patient.bone.title': 'Teeth stand in bone.',
  'patient.bone.what':
    'Under the gum lies bone. Each tooth stands in it with its root, much as a post stands in the ground.',
  'patient.bone.why':
    'Where a tooth is missing, the bone is often thinner. So it is looked at with care first. Now and then, new bone has to be built up.',
  'patient.bone.whySocket':
    'Where the root was, there is a hollow. In time it fills with bone, but the bone as a whole gets thinner.',

  // Common practice, no source. The aims are those of the readings: walls, roots, axis.
  'patient.implant.title': 'A small screw takes the place of the root.',
  'patient.implant.what':
    'It is called an implant. The spot is made numb. Then a small hole is made in the bone, step by step, and the screw is turned in.',
  'patient.implant.why':
    'This is where it is planned to go. The aim is bone on all sides, room to the roots beside it, and the right slant for the new tooth.',

  // Common practice, no source; no figures of success are given, since none would be this plan's.
  'patient.healing.title': 'Then the bone needs rest.',
  'patient.healing.what':
    'Bone has to grow tight on to the screw. That takes weeks to months. Till then, it is kept out of chewing: no food on it, and no lower tooth against it.',
  'patient.healing.risk':
    'It can swell and be sore for some days. Most implants heal well. At times one does not hold, a part comes loose, a tooth beside it is hurt, or the gum gets sore or draws back. Much of this can be put right. Smoking and poor cleaning make it more likely.',

  // Common practice, no source.
  'patient.tooth.title': 'The new tooth comes last.',
  'patient.tooth.what':
    'It is called a crown. It is made to match the teeth beside it, in its shape and its shade. It is fixed to the screw.',
  'patient.tooth.why':
    'You brush it like your own teeth. It cannot get a hole, but the gum round it can get sore, and bone can be lost. So it is checked from time to time. In years to come, it may have to be made again.',

  // Common practice, no source.
  'patient.choices.title': 'There is more than one way.',
  'patient.choices.ways': 'What else can be done',
  'patient.choices.bridge': 'A bridge: a false tooth that the teeth beside the gap hold.',
  'patient.choices.plate': 'A plate: a false tooth that you can take out.',
  'patient.choices.brace': 'A brace: the teeth are moved till the gap is closed.',
  'patient.choices.leave': 'No tooth: the gap stays as it is.',
  'patient.choices.ask': 'What you can ask',
  'patient.ask.why': 'Why this way, and what would suit me as well?',
  'patient.ask.long': 'How long will it all take?',
  'patient.ask.wear': 'What fills the gap while it heals?',
  'patient.ask.wrong': 'What could go wrong for me, and what would you do then?',
  'patient.ask.cost': 'What does it cost, now and later?',
  'patient.ask.call': 'Who can I call if it hurts or bleeds?',

  'patient.label.gum': 'gum',
  'patient.label.gap': 'the gap',
  'patient.label.bone': 'bone',
  'patient.label.root': 'root',
  'patient.label.implant': 'the implant',
  'patient.label.later': 'here the new tooth will be',
  'patient.label.crown': 'the new tooth',
  'patient.label.rest': 'no chewing here yet',

  'patient.drawing': 'Drawing of the upper front teeth from the front',
  'patient.turn': 'Turn the drawing with a finger.',
  'patient.turnKeys': 'The arrow keys turn it.',
  'patient.noGraphics': 'This screen cannot show the drawing. The words tell the same.',
  'patient.loading': 'The drawing is on its way.',
  'patient.back': 'Back',
  'patient.next': 'Next: {step}',
  'patient.again': 'From the start',

  'patient.numbers.show': 'Show the numbers',
  'patient.numbers.hide': 'Hide the numbers',
  'patient.numbers.title': 'Numbers of this plan',
  'patient.number.facial-wall-thinnest': 'thinnest bone in front of the implant',
  'patient.number.palatal-wall-thinnest': 'thinnest bone behind the implant',
  'patient.number.root-mesial': 'room to the root nearer the middle',
  'patient.number.root-distal': 'room to the root on the far side',
  'patient.number.apex-to-floor': 'bone above its tip',
  'patient.numbers.note': 'They are read off the model. Ask what they mean for you.',

  'patient.print': 'Print a page to take home',
  'patient.print.title': 'A new tooth on an implant',
  'patient.print.own': 'What I want to ask',
  'patient.print.date': 'Date',
  'patient.print.with': 'We talked with',

  'patient.caution': 'A simple model, not your scan. Your clinician decides with you.',
  'patient.cautionFull':
    'These pictures show a simple model made from a few measures. They are not your scan, and no promise of how it will be. Your clinician knows your mouth and decides with you.',
} as const;

export type PatientKey = keyof typeof patientWords;
/** The same messages in another language: no key may be missing, none may be added. */
export type PatientTranslation = Readonly<Record<PatientKey, string>>;
