/** Why a plan cannot be used. Codes of the message catalogue with the field, its value and the allowed range where there is one. */
export type FaultCode =
  | 'too-large'
  | 'not-json'
  | 'not-a-plan'
  | 'newer-version'
  | 'unknown-version'
  | 'missing'
  | 'wrong-type'
  | 'out-of-range'
  | 'not-allowed'
  | 'unknown-field'
  | 'too-long'
  | 'wrong-count'
  | 'depths-not-rising'
  | 'ridge-too-thin'
  | 'ridge-too-flared'
  | 'ridge-too-low'
  | 'arch-too-tight'
  | 'roots-meet'
  | 'contradiction'
  | 'other-exercise'
  | 'answer-changed';

export interface Fault {
  readonly code: FaultCode;
  /** Dotted path of the field, '' for the file itself. */
  readonly field: string;
  /** As found: a number, or a short text of it. */
  readonly value: number | string | null;
  /** Ends of the allowed range, inclusive. */
  readonly low: number | null;
  readonly high: number | null;
  /** The allowed values, or the other field of a contradiction. */
  readonly allowed: string | null;
}

export const fault = (
  code: FaultCode,
  field: string,
  rest: Partial<Omit<Fault, 'code' | 'field'>> = {},
): Fault => ({
  code,
  field,
  value: null,
  low: null,
  high: null,
  allowed: null,
  ...rest,
});
