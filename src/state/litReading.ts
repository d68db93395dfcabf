import { READING_IDS, type ReadingId } from '../core/measure/reading.ts';
import type { LiveState } from './live.ts';
import type { SessionState } from './session.ts';

/** The reading whose line is drawn strong everywhere: the one under the pointer or in focus, else the one picked out. */
export const litReading = (live: LiveState, session: SessionState): ReadingId | null =>
  READING_IDS.find((id) => id === live.hover) ?? session.selectedReading;
