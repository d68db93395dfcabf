import type { BufferGeometry, Material } from 'three';
import type { BoneLook, Layer } from '../state/session.ts';
import type { Removed } from './cut.ts';
import type { Materials } from './materials.ts';
import type { SiteSolids } from './siteSolids.ts';

interface PartProps {
  geometry: BufferGeometry;
  material: Material;
  /** Ink edge, or none. */
  hull?: Material;
  order?: number;
  shadow?: boolean;
  name?: string;
}

/** A solid that others own, with its ink edge. */
function Part({ geometry, material, hull, order = 0, shadow = false, name }: PartProps) {
  return (
    <>
      <mesh
        name={name}
        geometry={geometry}
        material={material}
        renderOrder={order}
        castShadow={shadow}
        receiveShadow={shadow}
        dispose={null}
      />
      {hull && <mesh geometry={geometry} material={hull} renderOrder={order} dispose={null} />}
    </>
  );
}

interface SolidsProps {
  solids: SiteSolids;
  materials: Materials;
  bone: BoneLook;
  layers: Readonly<Record<Layer, boolean>>;
  removed: Removed;
  shadow: boolean;
  /** The planned crown is drawn by itself. */
  ofCrown: boolean;
}

/** Bone, gum, teeth and planned crown of a site, as the session wants to see them. Layers are hidden, not taken out. */
export function Solids({ solids, materials: m, bone, layers, removed, shadow, ofCrown }: SolidsProps) {
  const cut = bone === 'cut';
  const boneMaterial = cut ? m.bone : bone === 'whole' ? m.wholeBone : m.veiledBone;
  const edge = cut ? m.cutHull : bone === 'whole' ? m.hull : undefined;
  return (
    <group>
      <Part
        name="bone"
        geometry={solids.bone}
        material={boneMaterial}
        order={bone === 'translucent' ? 4 : 0}
        shadow={shadow && bone !== 'translucent'}
      />
      {edge && <mesh geometry={solids.boneLight} material={edge} dispose={null} />}
      {cut && <Part geometry={solids.boneLight} material={m.ghostBone} order={6} />}
      {bone === 'translucent' && <Part geometry={solids.canal} material={m.canal} order={3} />}
      <group visible={layers.gum}>
        <Part geometry={solids.gum} material={cut ? m.gum : m.wholeGum} order={5} />
      </group>
      <group visible={layers.teeth}>
        {solids.teeth.map(({ tooth, beside, crown, root }) => {
          const near = cut && Math.sign(tooth.station) === removed;
          // The neighbour on the half that is taken away would hide the crown.
          const veiled = near && ofCrown;
          return (
            <group key={tooth.code} visible={beside || !near}>
              <Part
                geometry={crown}
                material={veiled ? m.veiledCrown : m.porcelain}
                hull={veiled ? undefined : m.hull}
                order={veiled ? 9 : 0}
                shadow={shadow && !veiled}
              />
              <Part
                geometry={root}
                material={near ? m.ghostRoot : m.root}
                hull={near ? undefined : m.hull}
                order={near ? 7 : 0}
                shadow={shadow && !near}
              />
            </group>
          );
        })}
      </group>
      <group visible={layers.crown && !ofCrown}>
        <Part geometry={solids.crown} material={m.planned} order={8} />
      </group>
      <group visible={layers.bite}>
        {solids.bite.map(({ tooth, crown }) => {
          const near = cut && Math.sign(tooth.edge[0]) === removed;
          return (
            <Part
              key={tooth.code}
              name="bite"
              geometry={crown}
              material={near ? m.ghostRoot : m.porcelain}
              hull={near ? undefined : m.hull}
              order={near ? 7 : 0}
            />
          );
        })}
      </group>
    </group>
  );
}
