/** Words of the crown: what is chosen for it, and what its readings mean together. */
export const crownWords = {
  'crownGroup.form': 'Planned crown against the reference tooth',
  'crownGroup.kept': 'Distances that are kept',

  'crownField.material': 'Material',
  'crownField.wear': 'Off the edge',
  'crownField.tilt.faciopalatal': 'Turned facially',
  'crownField.tilt.mesiodistal': 'Turned mesially',
  'crownField.cementGap': 'Cement gap',
  'crownField.post.diameter': 'Least post, diameter',
  'crownField.post.height': 'Least post, height',
  'crownField.belowGum': 'Finishing line below the gum margin',
  'crownField.overBone': 'Finishing line over the bone, at least',
  'crownField.channelBend': 'Channel bends above the shoulder by',
  'crownField.tray': 'Clear tray, thickness',
  'crownField.about': 'Default {value}. {source} ({known}).',
  'crownField.reset': '{field}: back to {value}',

  'material.zirconia': 'zirconia, monolithic',
  'material.lithium-disilicate': 'lithium disilicate, monolithic',
  'material.metal-ceramic': 'metal-ceramic',
  'material.about': 'Least thickness {least}. {source} ({known}).',
  'material.least': 'Least thickness {least}: {source}.',

  'edit.crownNumber': '{field} {value}',
  'edit.crownMaterial': 'crown of {material}',

  'exit.straight':
    'The axis comes out palatally, {distance} from the edge: a screw can hold the crown, and so can cement.',
  'exit.bent.facial':
    'The axis comes out facially, {distance} from the edge: cement it, or screw it by a channel bent {angle} to palatal (in use up to {most}).',
  'exit.bent.edge':
    'The axis comes out at the edge: cement it, or screw it by a channel bent {angle} to palatal (in use up to {most}).',
  'exit.beyond.facial':
    'The axis comes out facially, {distance} from the edge: cement it. A channel would have to bend {angle} to palatal (in use up to {most}).',
  'exit.beyond.edge':
    'The axis comes out at the edge: cement it. A channel would have to bend {angle} to palatal (in use up to {most}).',
  'exit.no-way.facial':
    'The axis comes out facially, {distance} from the edge: cement it. No bend toward palatal brings a channel out there.',
  'exit.no-way.edge':
    'The axis comes out at the edge: cement it. No bend toward palatal brings a channel out there.',
  'exit.misses': 'The axis does not come out of the planned crown: the crown would stand beside the implant.',

  'depthTurns.there': '{reading}: right as it is; a part-turn of {degrees} changes it by {change}.',
  'depthTurns.deeper': '{reading}: deeper by {count} × {degrees}, it comes to {after} ({status}).',
  'depthTurns.higher': '{reading}: higher by {count} × {degrees}, it comes to {after} ({status}).',
  'depthTurns.unjudged':
    '{reading}: a part-turn of {degrees} changes it by {change}; this way of fixing does not judge it.',
  'turnsBrief.there': 'Right as it is; a part-turn of {degrees} changes it by {change}.',
  'turnsBrief.deeper': '{count} × {degrees} deeper it comes to {after} ({status}).',
  'turnsBrief.higher': '{count} × {degrees} higher it comes to {after} ({status}).',
  'turnsBrief.unjudged': 'A part-turn of {degrees} changes it by {change}.',
  'edit.partTurns.deeper': 'deeper by {count} × {degrees}',
  'edit.partTurns.higher': 'higher by {count} × {degrees}',

  'crown.summary': 'Crown of {material}. {exit}',
} as const;
