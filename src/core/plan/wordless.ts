import { libraryShape } from '../implant/library.ts';
import type { Plan } from './plan.ts';

/** The plan with every text that a person may have written left out: title, note, the names of a shape and of a kit of one's own. */
export function wordless(plan: Plan): Plan {
  const { implant, rehearsal } = plan;
  return {
    ...plan,
    title: '',
    note: '',
    implant: libraryShape(implant.name) ? implant : { ...implant, name: '' },
    rehearsal: rehearsal?.kit ? { ...rehearsal, kit: { ...rehearsal.kit, title: '' } } : rehearsal,
  };
}
