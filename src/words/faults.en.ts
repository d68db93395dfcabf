/** Why a file cannot be used: one line, with the field, the value and the allowed range. */
export const faultWords = {
  'fault.too-large': 'The file is too large: {value} bytes; at most {high} are read.',
  'fault.not-json': 'The file is not JSON.',
  'fault.not-a-plan': 'The file is not a plan: {field} is {value}, not {allowed}.',
  'fault.not-an-object': 'The file is not a plan: it holds {value}, not an object.',
  'fault.newer-version':
    'The plan has file version {value}; this program reads {low} to {high}. A newer program wrote it.',
  'fault.unknown-version': '{field} is {value}; it must be a whole number from {low} to {high}.',
  'fault.missing': '{field} is missing.',
  'fault.missing-range': '{field} is missing; it must be from {low} to {high}.',
  'fault.missing-allowed': '{field} is missing; it must be one of {allowed}.',
  'fault.wrong-type': '{field} is {value}, not {allowed}.',
  'fault.wrong-type-range': '{field} is {value}, not {allowed} from {low} to {high}.',
  'fault.out-of-range': '{field} is {value}; it must be from {low} to {high}.',
  'fault.not-allowed': '{field} is {value}; it must be one of {allowed}.',
  'fault.unknown-field': '{field} is not a field that is known here.',
  'fault.too-long': '{field} has {value} characters; at most {high} are allowed.',
  'fault.wrong-count': '{field} has {value} entries; it must have {low} to {high}.',
  'fault.depths-not-rising': '{field} is {value}; it must be more than the depth before it, {low}.',
  'fault.ridge-too-thin':
    '{field} is {value}; at {allowed} mm below the crest the ridge would be too thin and cross itself. It must be from {low} to {high}.',
  'fault.ridge-too-thin-alone':
    '{field} is {value}; at {allowed} mm below the crest the ridge would be too thin and cross itself, and this number alone cannot mend it.',
  'fault.ridge-too-flared':
    '{field} is {value}; the ridge would flare so fast that it never reaches the floor. It must be from {low} to {high}.',
  'fault.ridge-too-flared-alone':
    '{field} is {value}; the ridge would flare so fast that it never reaches the floor, and this number alone cannot mend it.',
  'fault.ridge-too-low':
    '{field} is {value}; the crest would come too near to the floor. It must be from {low} to {high}.',
  'fault.ridge-too-low-alone':
    '{field} is {value}; the crest would come too near to the floor, and this number alone cannot mend it.',
  'fault.roots-meet':
    '{field} is {value}; the roots beside the gap would go through each other. It must be from {low} to {high}.',
  'fault.roots-meet-alone':
    '{field} is {value}; the roots beside the gap would go through each other, and this number alone cannot mend it.',
  'fault.arch-too-tight':
    '{field} is {value}; with a ridge that reaches so far palatally the arch would fold: it must be from {low} to {high}.',
  'fault.contradiction': '{field} is {value}; it must be from {low} to {high}.',
  'fault.contradiction-exact': '{field} is {value}; it must be {low}.',
  'fault.contradiction-least': '{field} is {value}; it must be at least {low}.',
  'fault.contradiction-most': '{field} is {value}; it must be at most {high}.',
  'fault.because': '{fault} That follows from {field}.',
  'fault.other-exercise': 'The attempt is of another exercise: {field} is {value}, here it is {allowed}.',
  'fault.answer-changed': '{field} is not the one that the exercise was given out with.',
  'type.number': 'a number',
  'type.int': 'a whole number',
  'type.string': 'a text',
  'type.array': 'a list',
  'type.object': 'an object',
  'fault.file': 'the file',
  'fault.unreadable': '{file}: it cannot be read.',
  'fault.inFile': '{file}: {fault}',
} as const;
