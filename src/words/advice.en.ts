/** Words of the advice that is computed: what would mend the worst finding, in this model. */
export const adviceWords = {
  'advice.shift': 'shift {amount} {toward}',
  'advice.tilt': 'tilt the crown end {amount} {toward} about the {pivot}',
  'advice.advance': 'seat it {amount} more {toward}',
  'advice.one': 'In this model: {first}.',
  'advice.two': 'In this model: {first}, or {second}.',
  'advice.none': 'In this model no single shift, tilt or advance mends it without breaking something else.',
  'advice.toward.facial': 'facially',
  'advice.toward.palatal': 'palatally',
  'advice.toward.mesial': 'mesially',
  'advice.toward.distal': 'distally',
  'advice.toward.apical': 'apically',
  'advice.toward.coronal': 'coronally',
  'advice.pivot.entry': 'entry',
  'advice.pivot.apex': 'apex',
  'advice.pivot.platform': 'platform',
  'advice.pivot.aim': 'aim point',
} as const;
