/** Places on the neighbours that a calliper finds, on the side that faces the gap: the contact point, and the enamel's line at the neck. Two heights tell how the hole leans. */
export const PIN_POINTS = ['mesial-contact', 'distal-contact', 'mesial-neck', 'distal-neck'] as const;
export type PinPoint = (typeof PIN_POINTS)[number];

/** Where a calliper is held at a drilled practice ridge (rule L12), mm. */
export type CalliperPlace =
  /** From the hole's side to the ridge's surface, across its axis, `depth` below the bone entry along it. */
  | { readonly kind: 'facial' | 'palatal'; readonly depth: number }
  /** From the side of a pin of the drill's diameter in the hole to a place on a neighbour's crown. */
  | { readonly kind: 'pin'; readonly point: PinPoint };

/** Where the check asks for readings: walls at three levels on both sides, and all places on the neighbours. */
export const BENCH_PLACES: readonly CalliperPlace[] = [
  ...(['facial', 'palatal'] as const).flatMap((kind) => [2, 5, 8].map((depth) => ({ kind, depth }))),
  ...PIN_POINTS.map((point) => ({ kind: 'pin' as const, point })),
];

/** SD of a reading with a calliper that shows tenths, mm (assumed, ours). */
export const CALLIPER_SD = 0.1;
