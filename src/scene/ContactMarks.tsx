import { useCallback, useEffect, useMemo } from 'react';
import { DoubleSide, MeshBasicMaterial } from 'three';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { seatNow } from '../core/plan/seat.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { contactMarks, MARK_TRIANGLES, MARK_VERTICES, MOST_MARKS, RIM } from './contactMarks.ts';
import { RewrittenGeometry } from './geometry.ts';
import { INK } from './materials.ts';
import { useEachPlan } from './useEachPlan.ts';

/** How far the marks stand off the threads, mm: ink, and the light mark over it. */
const LIFT = { ink: 0.04, light: 0.07 } as const;

interface ContactMarksProps {
  /** The implant where it stands. */
  stores: PlanStores;
  /** The plan itself. */
  planned: PlanStores;
}

/** Marks on the implant that say by their shape where it touches bone: strokes in contact, rings over a gap, half rings where the hole has broken out. */
export function ContactMarks({ stores, planned }: ContactMarksProps) {
  const shown = useSelected(stores.live, (state) => state.contactMarks);
  const made = useMemo(() => {
    const room = () => new RewrittenGeometry(MOST_MARKS * MARK_VERTICES, MOST_MARKS * MARK_TRIANGLES);
    const flat = (color: string) => new MeshBasicMaterial({ color, side: DoubleSide });
    return {
      ink: { geometry: room(), material: flat(INK) },
      light: { geometry: room(), material: flat('#fcfaf4') },
    };
  }, []);
  useEffect(
    () => () => {
      for (const { geometry, material } of Object.values(made)) {
        geometry.dispose();
        material.dispose();
      }
    },
    [made],
  );
  const apply = useCallback(
    (evaluation: Evaluation) => {
      const grid = shown ? seatNow(planned.document.getState().plan)?.contact.grid : undefined;
      for (const layer of ['ink', 'light'] as const) {
        const marks = grid && contactMarks(evaluation, grid, LIFT[layer], layer === 'ink' ? RIM : 0);
        made[layer].geometry.write(marks?.points ?? [], marks?.uv ?? [], marks?.index ?? []);
      }
    },
    [made, planned, shown],
  );
  useEachPlan(stores, apply);
  return (
    <group name="contact-marks">
      {Object.values(made).map(({ geometry, material }) => (
        <mesh
          key={geometry.geometry.uuid}
          geometry={geometry.geometry}
          material={material}
          frustumCulled={false}
          dispose={null}
        />
      ))}
    </group>
  );
}
