/** Why a file cannot be used: one line, with the field, the value and the allowed range. */
export const faultWords = {
  'fault.too-large': 'The file is too large: {value} characters; at most {high} are read.',
  'fault.not-json': 'The file is not JSON.',
  'fault.not-a-plan': 'The file is not a plan: {field} is {value}, not {allowed}.',
  'fault.newer-version':
    'The plan has file version {value}; this program reads {low} to {high}. A newer program wrote it.',
  'fault.unknown-version': '{field} is {value}; it must be a whole number from {low} to {high}.',
  'fault.missing': '{field} is missing.',
  'fault.missing-range': '{field} is missing; it must be from {low} to {high}.',
  'fault.wrong-type': '{field} is {value}, not a {allowed}.',
  'fault.out-of-range': '{field} is {value}; it must be from {low} to {high}.',
  'fault.not-allowed': '{field} is {value}; it must be one of {allowed}.',
  'fault.unknown-field': '{field} is not a field of a plan.',
  'fault.too-long': '{field} has {value} characters; at most {high} are allowed.',
  'fault.wrong-count': '{field} has {value} entries; it must have {low} to {high}.',
  'fault.depths-not-rising': '{field} is {value}; it must be more than the depth before it, {low}.',
  'fault.ridge-too-thin':
    '{field}: the ridge is only {value} mm wide on that side at {allowed} mm below the crest and would cross itself; it must be at least {low}.',
  'fault.arch-too-tight':
    '{field} is {value}; with a ridge that reaches so far palatally the arch would fold: at most {high} is possible.',
  'fault.contradiction': '{field} is {value}; it must be from {low} to {high}.',
  'fault.contradiction-least': '{field} is {value}; it must be at least {low}.',
  'fault.contradiction-most': '{field} is {value}; it must be at most {high}.',
  'fault.file': 'the file',
  'fault.unreadable': '{file}: it cannot be read.',
  'fault.inFile': '{file}: {fault}',
} as const;
