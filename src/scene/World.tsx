import { useThree } from '@react-three/fiber';
import { memo, useCallback, useEffect, useLayoutEffect, useMemo, useState } from 'react';
import { solidsOf } from '../core/plan/evaluate.ts';
import { plannedCrownOf } from '../core/restoration/plannedCrown.ts';
import { heldIn, plannedOf } from '../state/held.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { type Asked, CameraRig } from './CameraRig.tsx';
import { ContactMarks } from './ContactMarks.tsx';
import { ContactShade } from './ContactShade.tsx';
import { CrownSolids } from './CrownSolids.tsx';
import { CutFace } from './CutFace.tsx';
import { layEnds, newCut, type Removed } from './cut.ts';
import { Driver } from './Driver.tsx';
import { OwnedGeometry } from './geometry.ts';
import { Implant } from './Implant.tsx';
import { Ink } from './Ink.tsx';
import { Lights } from './Lights.tsx';
import type { Lens } from './lens.ts';
import { materials as makeMaterials, newBody } from './materials.ts';
import type { Sheet } from './Overlay.tsx';
import { Solids } from './Solids.tsx';
import { SiteGeometries } from './siteSolids.ts';
import { ToolInHand } from './ToolInHand.tsx';

export interface WorldProps {
  stores: PlanStores;
  /** The light setting: no shadows, fewer triangles. */
  light: boolean;
  asked: Asked;
  onFree: () => void;
  /** The ink of a frame and the lens it was drawn through. */
  onSheet: (sheet: Sheet, lens: Lens) => void;
}

/** The model of a site with the implant in it. */
export const World = memo(function World({ stores, light, asked, onFree, onSheet }: WorldProps) {
  const invalidate = useThree((three) => three.invalidate);
  const site = useSelected(stores.document, ({ plan }) => plan.site);
  const held = heldIn(stores);
  const planned = plannedOf(stores);
  const guessing = useSelected(stores.live, (state) => state.guessing);
  const wanted = useSelected(stores.session, (state) => state.bone);
  // While the hand guesses, nothing shows what lies in the bone.
  const bone = guessing ? 'whole' : wanted;
  const layers = useSelected(stores.session, (state) => state.layers);
  const ofCrown = useSelected(stores.session, (state) => state.place === 'crown');
  const crownLook = useSelected(stores.session, (state) => state.crownLook);
  const inMouth = useSelected(stores.session, (state) => state.asInMouth);
  const [removed, setRemoved] = useState<Removed>(1);
  const cut = useMemo(newCut, []);
  const body = useMemo(newBody, []);
  const materials = useMemo(() => makeMaterials(cut, body, light), [cut, body, light]);
  const geometries = useMemo(() => new SiteGeometries(light), [light]);
  const { wear, tilt } = useSelected(stores.document, ({ plan }) => plan.crown);
  const sited = useMemo(() => geometries.lay(solidsOf(site)), [geometries, site]);
  const solids = useMemo(() => {
    const { anatomy, frame } = sited;
    return {
      ...sited,
      crown: geometries.layPlanned(plannedCrownOf(anatomy, { wear, tilt }), anatomy, frame),
    };
  }, [geometries, sited, wear, tilt]);

  useEffect(() => () => materials.dispose(), [materials]);
  useEffect(() => () => geometries.dispose(), [geometries]);
  // A new solid or another look needs a frame; this is drawn again for nothing else.
  useEffect(() => invalidate());

  const onTurn = useCallback((side: Removed) => setRemoved(side), []);
  // A cut seen from its edge shows nothing: there the bone is seen through instead.
  const look = bone === 'cut' && removed === 0 ? 'translucent' : bone;
  const { anatomy } = solids;
  const drilled = useSelected(stores.live, (state) => state.drilled);
  const drilledBone = useMemo(() => new OwnedGeometry(), []);
  useEffect(() => () => drilledBone.dispose(), [drilledBone]);
  const shown = useMemo(() => {
    if (!held || held === 'wrong' || drilled?.site !== site) return solids;
    return { ...solids, bone: drilledBone.lay(drilled.mesh, solids.frame).geometry };
  }, [held, drilled, site, solids, drilledBone]);
  useLayoutEffect(() => layEnds(cut, anatomy), [cut, anatomy]);
  const floor = anatomy.ridge.floor - site.ridge.crestDrop;
  const target = useMemo(() => anatomy.toJaw([-0.6, -1, -1.9]), [anatomy]);

  return (
    <>
      <CameraRig stores={stores} asked={asked} inMouth={inMouth} onFree={onFree} />
      <Lights target={target} floor={floor} steel={materials.mirrors} light={light} />
      {light && <ContactShade anatomy={anatomy} floor={floor} keep={look === 'cut' ? cut.keep : null} />}
      <CutFace
        stores={stores}
        cut={cut}
        body={body}
        materials={materials}
        wanted={bone === 'cut'}
        shown={look === 'cut'}
        gum={layers.gum}
        onTurn={onTurn}
      />
      <Solids
        solids={shown}
        materials={materials}
        bone={look}
        layers={layers}
        removed={look === 'cut' ? removed : 0}
        shadow={!light}
        ofCrown={ofCrown}
      />
      {ofCrown && (
        <CrownSolids
          stores={stores}
          solids={solids}
          materials={materials}
          look={crownLook}
          cut={cut}
          removed={look === 'cut' ? removed : 0}
          shadow={!light}
        />
      )}
      {held === 'tool' ? (
        <ToolInHand stores={stores} materials={materials} shadow={!light} />
      ) : (
        <>
          <Implant
            stores={stores}
            materials={materials}
            segments={light ? 36 : 64}
            shadow={!light}
            bare={ofCrown}
          />
          {held === 'implant' && <Driver stores={stores} materials={materials} />}
          {held === 'implant' && planned && <ContactMarks stores={stores} planned={planned} />}
        </>
      )}
      <Ink stores={stores} solids={solids} cut={cut} bone={look} removed={removed} onSheet={onSheet} />
    </>
  );
});
