type Loose = Record<string, unknown>;

/** One step of the file format: takes a file of version `from` and returns one of `from + 1`. Steps are never changed once released. */
export interface Migration {
  readonly from: number;
  readonly name: string;
  readonly up: (file: Loose) => Loose;
}

const isObject = (v: unknown): v is Loose => typeof v === 'object' && v !== null && !Array.isArray(v);

/**
 * Version 0 (never released; it keeps the machinery honest) wrote the tilt as a pair `[faciopalatal, mesiodistal]`, the crown's fixing as
 * `cement: boolean`, and had no limits of its own nor a crest margin, which was always 1 mm; its implants had no flutes.
 */
const nameTheTilt: Migration = {
  from: 0,
  name: 'name-the-tilt',
  up: (file) => {
    const { cement, pose, implant, ...rest } = file;
    const named =
      isObject(pose) && Array.isArray(pose.tilt) ? { ...pose, tilt: tiltOfPair(pose.tilt) } : pose;
    const fixing = cement === true ? 'cemented' : cement === false ? 'screw-bone' : cement;
    const plain = isObject(implant) ? { ...implant, flutes: { count: 0, length: 0, depth: 0 } } : implant;
    return { ...rest, implant: plain, pose: named, fixing, crestMargin: 1, limits: {}, version: 1 };
  },
};

const tiltOfPair = (pair: readonly unknown[]): Loose => ({ faciopalatal: pair[0], mesiodistal: pair[1] });

/** Version 1 knew no rehearsal. */
const addTheRehearsal: Migration = {
  from: 1,
  name: 'add-the-rehearsal',
  up: (file) => ({ ...file, rehearsal: null, version: 2 }),
};

/** Version 2 chose nothing for the crown: it was reckoned with these. They are written out, so that a later default does not change an old file. */
const addTheCrown: Migration = {
  from: 2,
  name: 'add-the-crown',
  up: (file) => ({
    ...file,
    crown: {
      material: 'lithium-disilicate',
      wear: 0,
      tilt: { faciopalatal: 0, mesiodistal: 0 },
      cementGap: 0.05,
      post: { diameter: 1.5, height: 3 },
      belowGum: 0.5,
      overBone: 1,
      channelBend: 2,
      tray: 1,
    },
    version: 3,
  }),
};

export const MIGRATIONS: readonly Migration[] = [nameTheTilt, addTheRehearsal, addTheCrown];

/** Carry a file up to `target`, step by step; returns the names of the steps that ran. The caller has checked that `version` is a known one. */
export function migrate(file: Loose, version: number, target: number): { file: Loose; ran: string[] } {
  let current = file;
  const ran: string[] = [];
  for (let v = version; v < target; v++) {
    const step = MIGRATIONS.find((m) => m.from === v);
    if (!step) throw new Error(`no migration from version ${v}`);
    current = step.up(current);
    ran.push(step.name);
  }
  return { file: current, ran };
}
