/** Words of the seating: contact and play, the acts, the three questions, the finish, and the page about the torque estimate. */
export const seatingWords = {
  'contact.thread': 'Thread in bone',
  'contact.threadWithin': 'Thread in bone, of what lies within the bone’s outline',
  'contact.press': 'Mean press where it is in bone',
  'contact.widest': 'Widest gap',
  'contact.widestAt': '{gap}, {station} below the shoulder, {azimuth} {way} from facial',
  'contact.noGap': 'none',
  'contact.open': 'Thread in a hole that has broken out',
  'contact.room': 'Room round the implant',
  'contact.kind.none': 'no bone here',
  'contact.kind.gap': 'gap: the hole is wider',
  'contact.kind.open': 'the hole has broken out: no bone beyond it',
  'contact.kind.press': 'pressed into bone',
  'contact.kind.solid': 'undrilled bone',

  'play.held': 'The hole holds the implant: it can neither shift nor tilt.',
  'play.loose':
    'The implant can move in its hole: {shift} to each side, {tilt} of tilt. {thread} of the thread in bone holds.',
  'play.spins':
    'Only {thread} of the thread is in contact, less than {bound} (a bound of this project): the implant spins in place.',

  'seat.phase.before': 'not started',
  'seat.phase.fingers': 'by fingers',
  'seat.phase.wrench': 'by the wrench',
  'seat.phase.stopped-at-max': 'stopped at the maximum',
  'seat.phase.backed-out': 'backed out',
  'seat.phase.seated': 'seated',

  'seat.code.not-started': 'Set the implant to the hole first.',
  'seat.code.started':
    'The implant stands in the hole where its thread begins to bite, the shoulder {level}.',
  'seat.code.turned': 'Turned in {degrees}: {depth} deeper, the shoulder {level}.',
  'seat.code.fingers-at-limit':
    'Fingers turn it no further: {torque} reached (assumed). The wrench goes on from here.',
  'seat.code.stop-back-out':
    'Stop: the maximum of {max} is reached and the shoulder stands {level}. Back out. Never force it, never settle for a wrong face.',
  'seat.code.seated': 'Seated: the shoulder {level}, the neck facing rightly.',
  'seat.code.loosened':
    'Turned back {degrees}: the shoulder {level}. A turn back loosens: {loosened} so far since the start.',
  'seat.code.spins': 'It turns and goes no deeper: too little thread holds.',
  'seat.code.steered': 'Steered as far as was asked.',
  'seat.code.steer-held': 'The side of the hole holds it: it leans no further than the play of {play}.',
  'seat.code.steer-too-late':
    'The thread guides it now. It can be steered only by fingers, within the first {turns} turns.',
  'seat.code.backed-out': 'Backed out. The height of the ladder is open again.',

  'seat.level.above': '{amount} above the plan',
  'seat.level.below': '{amount} below the plan',
  'seat.level.at': 'at the planned level',

  'seat.cause.hole-short':
    'The hole is short: the apex stands on its floor. It lacks {short} of depth for the planned level; drill deeper if the floor of the nose or sinus allows.',
  'seat.cause.neck-uncut':
    'The neck has not been cut deep enough: past the cutter it presses {press} into the bone all round. Cut the neck {uncut} deeper.',
  'seat.cause.hard-bone':
    'Neither the floor nor the neck holds it: the bone is hard. Widen the hole or tap it, then start again.',

  'seat.question.level': 'Level right?',
  'seat.question.facing': 'Facing right?',
  'seat.question.torque': 'Torque left?',
  'seat.answer.yes': 'yes',
  'seat.answer.no': 'no',
  'seat.answer.unknown': 'not scripted',
  'seat.answer.level': '{level}, within ± {tolerance} is right',
  'seat.answer.faces': 'it faces',
  'seat.answer.askew': '{amount} off, {way}',
  'seat.answer.round': 'round neck',
  'seat.answer.torque': '{reading} of {max}, {left} left',
  'seat.answer.noScript': 'no wrench reading in this rehearsal',

  'seat.ladder.unknown':
    'The height of the ladder is not known before the thread has bitten: the planned level can be met to ± {half} only.',
  'seat.ladder.round': 'A round neck may stop at any level.',
  'seat.ladder.rung': '{level}: {degrees} more',
  'seat.ladder.rungHere': '{level}: here',
  'seat.ladder.rungBlocked': '{level}: {degrees} more, past the maximum',

  'seat.finish.unknown': 'Turn in until the thread has bitten; then the rungs are known.',
  'seat.finish.here': 'It stands on its best rung, the shoulder {level}.',
  'seat.finish.turn-in': 'Best rung: the shoulder {level}. {degrees} more: {parts}.',
  'seat.finish.blocked':
    'The best rung ({level}, {degrees} more) lies past the maximum: {limit}. Back out rather than stop at a wrong face.',
  'seat.finish.too-deep':
    'Every rung left lies too deep; the next stands {level}. Turning back loosens: back out and start anew, or accept it.',
  'seat.finish.first': '{degrees} to the first facing',
  'seat.finish.firstAndParts': '{degrees} to the first facing, then {parts} of {part}',
  'seat.finish.onlyParts': '{parts} of {part}',
  'seat.finish.noParts': 'a round neck stops anywhere',
  'seat.parts.one': 'one part-turn',
  'seat.parts.more': '{count} part-turns',

  'seat.start':
    'Set to the hole {degrees} further turned in, at the same level, the ladder stands {shift} higher.',
  'seat.startBack':
    'Set to the hole {degrees} less turned in, at the same level, the ladder stands {shift} lower.',
  'seat.startKeep': 'Start as before: a rung lies at the planned level.',

  'seat.summary': 'Shoulder {level}, {facing}, {torque}.',
  'seat.summary.faces': 'the neck facing',
  'seat.summary.askew': 'the neck {amount} off its facing',
  'seat.summary.round': 'a round neck',
  'seat.summary.torque': '{reading} of {max} on the wrench',
  'seat.summary.noTorque': 'no wrench scripted',
  'seat.summary.loosened': 'Loosened by {degrees} of turning back.',
  'seat.summary.backOuts': 'Backed out {times}.',
  'seat.times.one': 'once',
  'seat.times.more': '{count} times',

  'torque.label': 'Torque estimate',
  'torque.range': '{low} to {high}',
  'torque.note':
    'An engineering estimate with assumed numbers: it judges nothing and stops nothing. The wrench does.',
  'torque.parts': 'Of it, thread {thread}, side {side}.',

  'torque.about.what': 'What it is',
  'torque.about.whatText':
    'Two terms are added. The thread climbs an inclined plane against the force that pressed bone puts on its flanks; the side of the body rubs on the bone it presses. Both are taken from the contact between implant and hole, point by point.',
  'torque.about.formula': 'Formula and dimensions',
  'torque.about.screw':
    'Thread: T = W d/2 · (l + π μ d)/(π d − μ l). W is the axial force in N, d the mean diameter and l the lead in mm, μ has none: N·mm. Worked: 100 N, 4 mm, 1 mm, 0.3 give 77.8 N·mm.',
  'torque.about.side':
    'Side: T = μ p times the sum of radius × area, p in MPa (N/mm²), mm · mm² = mm³: N·mm. A cylinder: μ p π L d²/2; worked: 0.3, 1 MPa, 10 mm, 4 mm give 75.4 N·mm. A frustum: (2π/cos α) h (r₁² + r₁r₂ + r₂²)/3; radii 2 and 1.5, height 10 give 194.0 mm³.',
  'torque.about.force':
    'Force on the flanks: W = p × the ring of the thread’s depth (no deeper than the press) that is in bone, once for every pitch: MPa · mm² = N. Ten N·mm are one N·cm.',
  'torque.about.assumed': 'Assumed, each by this project',
  'torque.assumption.pressure-by-class':
    'Pressure of fully pressed bone by bone class 1 to 4, in MPa: {one}; {two}; {three}; {four}. Wide, and chosen so that the torques measured in foam fall inside: a fit, no proof.',
  'torque.assumption.pressure-from-press':
    'The pressure grows with the press, ever more slowly: at {share} of the radius it is {reached} of the full; past that the bone is mostly crushed on.',
  'torque.assumption.friction-range': 'Friction of metal on bone {low} to {high}.',
  'torque.assumption.thread-force': 'The bone presses on the thread’s flanks as hard as on the side.',
  'torque.assumption.one-bone':
    'One bone all through: the dense shell at the crest and at the walls is not set apart from the core.',
  'torque.assumption.no-cutting':
    'Cutting itself takes no torque, and flutes, chips and blood change nothing.',
  'torque.assumption.no-speed': 'Speed of turning, pauses and creep of the bone change nothing.',
  'torque.about.trends': 'Published trends that it follows',
  'torque.about.density':
    'Denser bone, more torque: 48.9 N·cm in dense foam against 11.7 in soft, 4.0 × 11 mm, drilled as usual (Camargo BA et al. Braz J Oral Sci 2017;15:201–4).',
  'torque.about.undersize':
    'A smaller hole, more torque: 22.6 N·cm undersized against 11.7, both in soft foam (the same study). Its holes are not known here; 3.6 and 3.2 mm are assumed.',
  'torque.about.taper':
    'More taper, more torque: tapered bodies reached 25 to 50 N·cm in 13 of 40 groups, parallel ones in 8 to 9 (Stoilov M et al. J Funct Biomater 2023;14:469). A model fitted to measurements needs a side term for a tapered body and none for a parallel one (Yang B et al. J Mech Behav Biomed Mater 2022;131:105223).',
  'torque.about.cannot': 'What it cannot',
  'torque.about.cannotText':
    'It cannot tell the torque of a patient, of a product or of a given piece of foam. High and low lie about ten times apart. It knows no stripped thread, no bone that breaks, no healing. No survival follows from it: studies disagree about what torque is for (32 N·cm asked for an immediate tooth in one, no difference above and below 35 or 50 in others).',
} as const;
