import type { ComponentType } from 'react';
import type { PlanStores } from '../../state/stores.ts';
import type { DrawnLedger } from '../revision.ts';

export interface PlaceProps {
  readonly stores: PlanStores;
}

/** What the parts that differ from place to place are called. */
export interface PartNames {
  readonly rail: string;
  readonly profile: string;
  readonly readings: string;
}

/** A place at the table: rail, stage, section with a drawing beside it, readings. */
export interface Bench {
  readonly kind: 'bench';
  /** How the parts are laid out, where it is not as in the other places. */
  readonly layout?: 'teach';
  readonly names: PartNames;
  /** What stage and section show: the plan itself, or the same document with something else in the implant's place. */
  readonly shown: (stores: PlanStores) => PlanStores;
  /** The sentence over the page. */
  readonly Sentence: ComponentType<PlaceProps>;
  /** The fields at the left. */
  readonly Rail: ComponentType<PlaceProps>;
  readonly Section: ComponentType<PlaceProps>;
  /** The drawing beside the section. */
  readonly Beside: ComponentType<PlaceProps>;
  /** What stands under section and drawing. */
  readonly Under: ComponentType<PlaceProps>;
}

/** A place with a page of its own under the header. It reports to the ledger what it has drawn of the stage, or that it has none. */
export interface Page {
  readonly kind: 'page';
  readonly Page: ComponentType<PlaceProps & { ledger: DrawnLedger }>;
}
