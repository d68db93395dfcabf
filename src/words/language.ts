/** Languages that the patient's page speaks; everything else speaks the first. */
export const LANGUAGES = ['en', 'de', 'es'] as const;
export type Language = (typeof LANGUAGES)[number];
