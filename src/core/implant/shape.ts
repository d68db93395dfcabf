/** One-piece abutment above the shoulder, mm. */
export interface AbutmentNumbers {
  readonly height: number;
  readonly baseDiameter: number;
  readonly topDiameter: number;
}

/** Cutting flutes: grooves let into thread and core from the apex up, which clear what the thread cuts. mm. */
export interface FluteNumbers {
  /** How many, evenly round the axis; 0: none. */
  readonly count: 0 | 2 | 3 | 4;
  /** From the apical rim to where they have run out. */
  readonly length: number;
  /** Deepest below the thread crests. */
  readonly depth: number;
}

/** An implant from a few numbers (rule S15); names of lengths and diameters follow ISO 24466. mm, N·cm. */
export interface ImplantShape {
  /** What it is, in words of our own: a code of the catalogue for library shapes, free text for own shapes. */
  readonly name: string;
  /** Apex to the last thread crest. */
  readonly implantedLength: number;
  /** Last thread crest to the shoulder; 0 where the shoulder is meant to lie at the crest. */
  readonly transmucosalLength: number;
  readonly apicalDiameter: number;
  /** At the thread crests of the parallel part. */
  readonly implantedDiameter: number;
  readonly platformDiameter: number;
  /** Length over which the body grows from the apical to the implanted diameter. */
  readonly taperLength: number;
  readonly thread: { readonly depth: number; readonly pitch: number; readonly starts: number };
  readonly flutes: FluteNumbers;
  /** Amplitude of a scalloped shoulder, 0: flat. */
  readonly scallop: number;
  /** The neck (or abutment) looks the same every 360/n degrees; 0: round. */
  readonly index: number;
  readonly abutment: AbutmentNumbers | null;
  /** Maximum insertion torque, N·cm. */
  readonly maxTorque: number;
}

export const totalLength = (s: ImplantShape): number => s.implantedLength + s.transmucosalLength;
export const overallLength = (s: ImplantShape): number => totalLength(s) + (s.abutment?.height ?? 0);
/** Radius of the core between the threads at the apical rim, mm. */
export const apicalCore = (s: ImplantShape): number => s.apicalDiameter / 2 - s.thread.depth;
/** Advance per turn, mm. */
export const leadOf = (s: ImplantShape): number => s.thread.pitch * s.thread.starts;
