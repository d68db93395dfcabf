import type { ComponentType } from 'react';
import type { HandStores } from '../../state/inHand.ts';
import type { PlanStores } from '../../state/stores.ts';
import type { TeachStores } from '../../state/teach.ts';
import type { PlainKey } from '../../words/say.ts';
import type { DrawnLedger } from '../revision.ts';

/** The stores of the page, and the same document with the tool, the implant on its way in, or the plan gone wrong in the implant's place. */
export interface Views {
  readonly stores: PlanStores;
  readonly inHand: HandStores;
  readonly inSeat: HandStores;
  readonly inTeach: TeachStores;
}

/** What the parts that differ from place to place are called. */
export interface PartNames {
  readonly rail: PlainKey;
  readonly profile: PlainKey;
  readonly readings: PlainKey;
}

/** A place at the table: rail, stage, section with a drawing beside it, readings. */
export interface Bench {
  readonly kind: 'bench';
  /** How the parts are laid out, where it is not as in the other places. */
  readonly layout?: 'teach';
  readonly names: PartNames;
  /** What stage and section show. */
  readonly shown: (views: Views) => PlanStores;
  /** The sentence over the page. */
  readonly Sentence: ComponentType<Views>;
  /** The fields at the left. */
  readonly Rail: ComponentType<Views>;
  /** The section, where it is not the one through the axis with its walls. */
  readonly Section?: ComponentType<Views>;
  /** The drawing beside the section. */
  readonly Beside: ComponentType<Views>;
  /** What stands under section and drawing. */
  readonly Under: ComponentType<Views>;
}

/** A place with a page of its own under the header. It reports to the ledger what it has drawn of the stage, or that it has none. */
export interface Page {
  readonly kind: 'page';
  readonly Page: ComponentType<Views & { ledger: DrawnLedger }>;
}
