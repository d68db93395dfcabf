import type { PatientTranslation } from './patient.en.ts';

/** Words of the patient's page in German. A draft: the page says that no native speaker has read it yet. */
export const patientWordsDe: PatientTranslation = {
  'patient.page': 'Für Patientinnen und Patienten',
  'patient.language': 'Sprache',
  'patient.language.en': 'English',
  'patient.language.de': 'Deutsch',
  'patient.language.es': 'Español',
  'patient.draft': 'Ein Entwurf, den noch niemand mit deutscher Muttersprache gelesen hat.',

  'patient.tooth.11': 'Oben rechts: der erste Zahn von der Mitte aus',
  'patient.tooth.12': 'Oben rechts: der zweite Zahn von der Mitte aus',
  'patient.tooth.13': 'Oben rechts: der dritte Zahn von der Mitte aus',
  'patient.tooth.14': 'Oben rechts: der vierte Zahn von der Mitte aus',
  'patient.tooth.21': 'Oben links: der erste Zahn von der Mitte aus',
  'patient.tooth.22': 'Oben links: der zweite Zahn von der Mitte aus',
  'patient.tooth.23': 'Oben links: der dritte Zahn von der Mitte aus',
  'patient.tooth.24': 'Oben links: der vierte Zahn von der Mitte aus',

  'patient.steps': 'Schritte',
  'patient.gap.name': 'die Lücke',
  'patient.bone.name': 'der Knochen',
  'patient.implant.name': 'das Implantat',
  'patient.healing.name': 'die Ruhezeit',
  'patient.tooth.name': 'der neue Zahn',
  'patient.choices.name': 'Ihre Wahl',

  'patient.gap.title': 'Ein Zahn fehlt.',
  'patient.gap.titleSocket': 'Ein Zahn lässt sich nicht erhalten.',
  'patient.gap.what': 'Sie sehen die oberen Vorderzähne. An einer Stelle ist nur Zahnfleisch und kein Zahn.',
  'patient.gap.whatSocket':
    'Sie sehen die oberen Vorderzähne. Der Zahn, der sich nicht erhalten lässt, ist so gezeichnet, als wäre er schon entfernt.',
  'patient.gap.why':
    'Eine Lücke kann beim Abbeißen und beim Sprechen stören. Mit der Zeit können die Zähne daneben in die Lücke kippen. Und viele stört, wie es aussieht.',

  'patient.bone.title': 'Zähne stehen im Knochen.',
  'patient.bone.what':
    'Unter dem Zahnfleisch liegt Knochen. Jeder Zahn steht mit seiner Wurzel darin, etwa wie ein Pfosten im Boden.',
  'patient.bone.why':
    'Wo ein Zahn fehlt, ist der Knochen oft dünner. Darum wird er zuerst genau angesehen. Manchmal muss neuer Knochen aufgebaut werden.',
  'patient.bone.whySocket':
    'Wo die Wurzel war, bleibt ein Hohlraum. Mit der Zeit füllt er sich mit Knochen, doch insgesamt wird der Knochen dünner.',

  'patient.implant.title': 'Eine kleine Schraube ersetzt die Wurzel.',
  'patient.implant.what':
    'Sie heißt Implantat. Die Stelle wird betäubt. Dann wird Schritt für Schritt ein kleines Loch in den Knochen gebohrt und die Schraube hineingedreht.',
  'patient.implant.why':
    'Hier soll sie nach der Planung stehen. Das Ziel: Knochen auf allen Seiten, Abstand zu den Wurzeln daneben und die richtige Neigung für den neuen Zahn.',

  'patient.healing.title': 'Dann braucht der Knochen Ruhe.',
  'patient.healing.what':
    'Der Knochen muss fest an die Schraube anwachsen. Das dauert Wochen bis Monate. Bis dahin wird dort nicht gekaut: kein Essen darauf, kein unterer Zahn dagegen.',
  'patient.healing.risk':
    'Einige Tage lang kann es geschwollen sein und wehtun. Die meisten Implantate heilen gut ein. Manchmal hält eines nicht, ein Teil lockert sich, ein Zahn daneben wird verletzt, oder das Zahnfleisch entzündet sich oder zieht sich zurück. Vieles davon lässt sich beheben. Rauchen und schlechtes Putzen machen es wahrscheinlicher.',

  'patient.tooth.title': 'Der neue Zahn kommt zuletzt.',
  'patient.tooth.what':
    'Er heißt Krone. Er wird in Form und Farbe den Zähnen daneben angepasst und auf der Schraube befestigt.',
  'patient.tooth.why':
    'Sie putzen ihn wie Ihre eigenen Zähne. Er bekommt keine Löcher, aber das Zahnfleisch um ihn herum kann sich entzünden, und Knochen kann verloren gehen. Darum wird er immer wieder kontrolliert. Nach Jahren muss er vielleicht erneuert werden.',

  'patient.choices.title': 'Es gibt mehr als einen Weg.',
  'patient.choices.ways': 'Was man sonst tun kann',
  'patient.choices.bridge': 'Eine Brücke: ein Zahnersatz, den die Zähne neben der Lücke halten.',
  'patient.choices.plate': 'Eine Prothese: ein Zahnersatz, den Sie herausnehmen können.',
  'patient.choices.brace': 'Eine Spange: Die Zähne werden bewegt, bis die Lücke zu ist.',
  'patient.choices.leave': 'Kein Zahn: Die Lücke bleibt, wie sie ist.',
  'patient.choices.ask': 'Was Sie fragen können',
  'patient.ask.why': 'Warum dieser Weg, und was käme für mich noch in Frage?',
  'patient.ask.long': 'Wie lange dauert das alles?',
  'patient.ask.wear': 'Was füllt die Lücke, solange es heilt?',
  'patient.ask.wrong': 'Was könnte bei mir schiefgehen, und was würden Sie dann tun?',
  'patient.ask.cost': 'Was kostet es, jetzt und später?',
  'patient.ask.call': 'Wen rufe ich an, wenn es wehtut oder blutet?',

  'patient.label.gum': 'Zahnfleisch',
  'patient.label.gap': 'die Lücke',
  'patient.label.bone': 'Knochen',
  'patient.label.root': 'Wurzel',
  'patient.label.implant': 'das Implantat',
  'patient.label.later': 'hier wird der neue Zahn stehen',
  'patient.label.crown': 'der neue Zahn',
  'patient.label.rest': 'hier noch nicht kauen',

  'patient.drawing': 'Zeichnung der oberen Vorderzähne von vorn',
  'patient.turn': 'Drehen Sie die Zeichnung mit dem Finger.',
  'patient.turnKeys': 'Die Pfeiltasten drehen sie.',
  'patient.noGraphics': 'Dieser Bildschirm kann die Zeichnung nicht zeigen. Die Worte sagen dasselbe.',
  'patient.loading': 'Die Zeichnung kommt gleich.',
  'patient.back': 'Zurück',
  'patient.next': 'Weiter: {step}',
  'patient.again': 'Von vorn',

  'patient.numbers.show': 'Zahlen zeigen',
  'patient.numbers.hide': 'Zahlen verbergen',
  'patient.numbers.title': 'Zahlen dieser Planung',
  'patient.number.facial-wall-thinnest': 'der dünnste Knochen vor dem Implantat',
  'patient.number.palatal-wall-thinnest': 'der dünnste Knochen hinter dem Implantat',
  'patient.number.root-mesial': 'Abstand zur Wurzel, die näher an der Mitte liegt',
  'patient.number.root-distal': 'Abstand zur Wurzel auf der anderen Seite',
  'patient.number.apex-to-floor': 'Knochen über der Spitze',
  'patient.numbers.note': 'Sie sind am Modell abgelesen. Fragen Sie, was sie für Sie bedeuten.',

  'patient.print': 'Ein Blatt für zu Hause drucken',
  'patient.print.title': 'Ein neuer Zahn auf einem Implantat',
  'patient.print.own': 'Was ich fragen möchte',
  'patient.print.date': 'Datum',
  'patient.print.with': 'Gesprochen mit',

  'patient.caution':
    'Ein einfaches Modell, nicht Ihre Aufnahme. Ihre Zahnärztin oder Ihr Zahnarzt entscheidet mit Ihnen.',
  'patient.cautionFull':
    'Die Bilder zeigen ein einfaches Modell aus wenigen Maßen. Sie sind nicht Ihre Aufnahme und kein Versprechen, wie es wird. Ihre Zahnärztin oder Ihr Zahnarzt kennt Ihren Mund und entscheidet mit Ihnen.',
};
