import type { PatientTranslation } from './patient.en.ts';

/** Words of the patient's page in Spanish. A draft: the page says that no native speaker has read it yet. */
export const patientWordsEs: PatientTranslation = {
  'patient.page': 'Para el paciente',
  'patient.language': 'Idioma',
  'patient.language.en': 'English',
  'patient.language.de': 'Deutsch',
  'patient.language.es': 'Español',
  'patient.draft': 'Un borrador que aún no ha leído ningún hablante nativo.',

  'patient.tooth.11': 'Arriba a la derecha: el primer diente desde el centro',
  'patient.tooth.12': 'Arriba a la derecha: el segundo diente desde el centro',
  'patient.tooth.13': 'Arriba a la derecha: el tercer diente desde el centro',
  'patient.tooth.14': 'Arriba a la derecha: el cuarto diente desde el centro',
  'patient.tooth.21': 'Arriba a la izquierda: el primer diente desde el centro',
  'patient.tooth.22': 'Arriba a la izquierda: el segundo diente desde el centro',
  'patient.tooth.23': 'Arriba a la izquierda: el tercer diente desde el centro',
  'patient.tooth.24': 'Arriba a la izquierda: el cuarto diente desde el centro',

  'patient.steps': 'Pasos',
  'patient.gap.name': 'el hueco',
  'patient.bone.name': 'el hueso',
  'patient.implant.name': 'el implante',
  'patient.healing.name': 'el reposo',
  'patient.tooth.name': 'el diente nuevo',
  'patient.choices.name': 'usted elige',

  'patient.gap.title': 'Falta un diente.',
  'patient.gap.titleSocket': 'Un diente no se puede conservar.',
  'patient.gap.what':
    'Está viendo los dientes de delante, los de arriba. En un lugar hay encía, pero ningún diente.',
  'patient.gap.whatSocket':
    'Está viendo los dientes de delante, los de arriba. El que no se puede conservar está dibujado como si ya no estuviera.',
  'patient.gap.why':
    'Un hueco puede molestar al morder y al hablar. Con el tiempo, los dientes de al lado pueden inclinarse hacia él. Y a muchas personas les importa el aspecto.',

  'patient.bone.title': 'Los dientes se apoyan en el hueso.',
  'patient.bone.what':
    'Debajo de la encía hay hueso. Cada diente está metido en él con su raíz, como un poste en la tierra.',
  'patient.bone.why':
    'Donde falta un diente, el hueso suele ser más fino. Por eso primero se mira con cuidado. A veces hay que formar hueso nuevo.',
  'patient.bone.whySocket':
    'Donde estaba la raíz hay una cavidad. Con el tiempo se llena de hueso, pero en conjunto el hueso se hace más fino.',

  'patient.implant.title': 'Un pequeño tornillo hace de raíz.',
  'patient.implant.what':
    'Se llama implante. Se duerme la zona. Después se hace poco a poco un agujero pequeño en el hueso y se enrosca el tornillo.',
  'patient.implant.why':
    'Aquí está previsto colocarlo. Se busca que tenga hueso por todos los lados, espacio hasta las raíces vecinas y la inclinación adecuada para el diente nuevo.',

  'patient.healing.title': 'Después, el hueso necesita reposo.',
  'patient.healing.what':
    'El hueso tiene que crecer pegado al tornillo. Eso tarda de semanas a meses. Hasta entonces no se mastica ahí: sin comida encima y sin que lo toque un diente de abajo.',
  'patient.healing.risk':
    'Durante unos días puede hincharse y doler. La mayoría de los implantes cicatriza bien. A veces alguno no se sujeta, se afloja una pieza, se daña un diente de al lado, o la encía se inflama o se retira. Mucho de esto tiene arreglo. El tabaco y la mala limpieza lo hacen más probable.',

  'patient.tooth.title': 'El diente nuevo llega al final.',
  'patient.tooth.what':
    'Se llama corona. Se hace a juego con los dientes de al lado, en forma y en color. Se fija al tornillo.',
  'patient.tooth.why':
    'Se cepilla como los demás dientes. No puede tener caries, pero la encía de alrededor se puede inflamar y se puede perder hueso. Por eso se revisa de vez en cuando. Con los años, puede que haya que renovarlo.',

  'patient.choices.title': 'Hay más de un camino.',
  'patient.choices.ways': 'Qué más se puede hacer',
  'patient.choices.bridge': 'Un puente: un diente postizo sujeto por los dientes de al lado.',
  'patient.choices.plate': 'Una prótesis: un diente postizo que usted se puede quitar.',
  'patient.choices.brace': 'Un aparato: se mueven los dientes hasta cerrar el hueco.',
  'patient.choices.leave': 'Ningún diente: el hueco se queda como está.',
  'patient.choices.ask': 'Qué puede preguntar',
  'patient.ask.why': '¿Por qué este camino, y qué otra cosa me iría bien?',
  'patient.ask.long': '¿Cuánto tiempo lleva todo?',
  'patient.ask.wear': '¿Qué llevaré en el hueco mientras cicatriza?',
  'patient.ask.wrong': '¿Qué podría salir mal en mi caso, y qué harían entonces?',
  'patient.ask.cost': '¿Cuánto cuesta, ahora y más adelante?',
  'patient.ask.call': '¿A quién llamo si duele o sangra?',

  'patient.label.gum': 'encía',
  'patient.label.gap': 'el hueco',
  'patient.label.bone': 'hueso',
  'patient.label.root': 'raíz',
  'patient.label.implant': 'el implante',
  'patient.label.later': 'aquí irá el diente nuevo',
  'patient.label.crown': 'el diente nuevo',
  'patient.label.rest': 'aquí aún no se mastica',

  'patient.drawing': 'Dibujo de los dientes de arriba vistos de frente',
  'patient.turn': 'Gire el dibujo con un dedo.',
  'patient.turnKeys': 'Las teclas de flecha lo giran.',
  'patient.noGraphics': 'Esta pantalla no puede mostrar el dibujo. Las palabras dicen lo mismo.',
  'patient.loading': 'El dibujo llega enseguida.',
  'patient.back': 'Atrás',
  'patient.next': 'Siguiente: {step}',
  'patient.again': 'Desde el principio',

  'patient.numbers.show': 'Mostrar los números',
  'patient.numbers.hide': 'Ocultar los números',
  'patient.numbers.title': 'Números de este plan',
  'patient.number.facial-wall-thinnest': 'el hueso más fino por delante del implante',
  'patient.number.palatal-wall-thinnest': 'el hueso más fino por detrás del implante',
  'patient.number.root-mesial': 'espacio hasta la raíz del lado del centro',
  'patient.number.root-distal': 'espacio hasta la raíz del otro lado',
  'patient.number.apex-to-floor': 'hueso por encima de la punta',
  'patient.numbers.note': 'Están leídos en el modelo. Pregunte qué significan para usted.',

  'patient.print': 'Imprimir una hoja para llevar',
  'patient.print.title': 'Un diente nuevo sobre un implante',
  'patient.print.own': 'Lo que quiero preguntar',
  'patient.print.date': 'Fecha',
  'patient.print.with': 'Hablado con',

  'patient.caution': 'Un modelo sencillo, no su radiografía. Su dentista decide con usted.',
  'patient.cautionFull':
    'Las imágenes muestran un modelo sencillo hecho con pocas medidas. No son su radiografía ni prometen cómo quedará. Su dentista conoce su boca y decide con usted.',
};
