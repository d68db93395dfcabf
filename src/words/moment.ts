const MOMENT = new Intl.DateTimeFormat('en-GB', {
  day: 'numeric',
  month: 'short',
  hour: '2-digit',
  minute: '2-digit',
});

/** A day and a time of day on this machine's clock, from ms since 1970: `26 Nov, 14:05`. */
export const formatMoment = (at: number): string => MOMENT.format(at);
