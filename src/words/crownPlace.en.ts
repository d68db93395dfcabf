/** Words of the place where the crown is looked at. */
export const crownPlaceWords = {
  'place.crown': 'Crown',
  'panel.crown': 'Crown and its fixing',
  'panel.crownAcross': 'Mesial–distal',

  'crown.fixing': 'Fixing',
  'crown.fixingNote': 'one pose, three answers',
  'crown.form': 'Planned crown',
  'crown.formNote': 'mirror of the reference',
  'crown.look': 'Shown as',
  'crown.look.outline': 'outline',
  'crown.look.translucent': 'clear',
  'crown.look.solid': 'solid',
  'crown.look.none': 'not at all',
  'crown.material': 'Material',
  'crown.material.zirconia': 'zirconia, wall {least} at least',
  'crown.material.lithium-disilicate': 'lithium disilicate, wall {least} at least',
  'crown.material.metal-ceramic': 'metal-ceramic, wall {least} at least',
  'crown.axis': 'Implant’s axis',
  'crown.axisNote': 'about the entry',
  'crown.depth': 'Depth',
  'crown.kept': 'Distances kept',
  'crown.keptNote': 'about the crown',
  'crown.usual': 'to {value}',
  'crown.reset': '{field}: back to {value}',
  'crown.setTo': '{field} {value}',
  'edit.crownMaterial': 'material: {material}',

  'crownField.wear': 'worn by',
  'crownField.tilt.faciopalatal': 'tilted facially',
  'crownField.tilt.mesiodistal': 'tilted mesially',
  'crownField.cementGap': 'cement gap',
  'crownField.post.diameter': 'least post, diameter',
  'crownField.post.height': 'least post, height',
  'crownField.belowGum': 'margin below the gum',
  'crownField.overBone': 'margin over the bone',
  'crownField.channelBend': 'channel bends above',
  'crownField.tray': 'clear tray',
  'crownField.name.wear': 'Crown worn by',
  'crownField.name.tilt.faciopalatal': 'Crown tilted facially',
  'crownField.name.tilt.mesiodistal': 'Crown tilted mesially',
  'crownField.name.cementGap': 'Cement gap',
  'crownField.name.post.diameter': 'Least post, diameter',
  'crownField.name.post.height': 'Least post, height',
  'crownField.name.belowGum': 'Finishing line below the planned gum margin, at least',
  'crownField.name.overBone': 'Finishing line above the bone, at least',
  'crownField.name.channelBend': 'The channel can bend above the shoulder, from',
  'crownField.name.tray': 'Thickness of the clear tray',

  'crown.lead.within': 'It suits the fixing.',
  'crown.lead.near': 'It will do, with care.',
  'crown.lead.beyond': 'It does not suit the fixing.',

  'crown.brief.straight': 'channel straight, shoulder {depth} deep',
  'crown.brief.bent': 'channel turned {turn}, shoulder {depth} deep',
  'crown.brief.none': 'no palatal channel, shoulder {depth} deep',
  'crown.brief.straightAtCej': 'channel straight, {level} from the CEJ',
  'crown.brief.bentAtCej': 'channel turned {turn}, {level} from the CEJ',
  'crown.brief.noneAtCej': 'no palatal channel, {level} from the CEJ',
  'crown.brief.cemented': 'axis {offset} off the line, margin {depth} deep',

  'crown.screw.straight':
    'The screw’s channel comes out palatally, {distance} from the edge, and runs straight; none of it shows from the front.',
  'crown.screw.bent.facial':
    'The axis comes out facially, {distance} from the edge; a channel turned by {turn} comes out palatally.',
  'crown.screw.bent.edge':
    'The axis comes out at the incisal edge; a channel turned by {turn} comes out palatally.',
  'crown.screw.too-far.facial':
    'The axis comes out facially, {distance} from the edge; a channel would turn by {turn}, beyond the {most} in use: cement, or tilt.',
  'crown.screw.too-far.edge':
    'The axis comes out at the incisal edge; a channel would turn by {turn}, beyond the {most} in use: cement, or tilt.',
  'crown.screw.none':
    'The axis comes out facially, {distance} from the edge; no turn of the channel leads palatally: cement, or tilt.',
  'crown.screw.misses': 'The axis does not come out of the planned crown at all: tilt or shift the implant.',
  'crown.cement.on': 'The axis passes {offset} from the incisal line, where a cemented crown wants it.',
  'crown.cement.facial':
    'The axis passes {offset} facial of the incisal line: the crown over it is thin or bulky facially.',
  'crown.cement.palatal':
    'The axis passes {offset} palatal of the incisal line: the crown over it is bulky palatally.',

  'crown.depth.cemented.null':
    'Its margin lies {depth} below the planned gum margin: hidden, and cement can be reached there.',
  'crown.depth.cemented.low':
    'Its margin lies {above} above the planned gum margin: it shows. Lower it or set the implant deeper.',
  'crown.depth.cemented.high':
    'Its margin lies {depth} below the planned gum margin: left-over cement is hard to find so deep. Screw it, or set the implant higher.',
  'crown.depth.screw-bone.null':
    'The shoulder lies {depth} below the planned gum margin: enough height for the contour.',
  'crown.depth.screw-bone.low':
    'The shoulder lies only {depth} below the planned gum margin: little height for the contour, and metal may show.',
  'crown.depth.screw-bone.high':
    'The shoulder lies {depth} below the planned gum margin, deeper than the contour needs.',
  'crown.depth.screw-gum.null':
    'The neck’s shoulder lies {level} from the reference CEJ, where such a neck is meant to lie.',
  'crown.depth.screw-gum.low':
    'The neck’s shoulder lies {level} from the reference CEJ: deeper than it is meant to lie.',
  'crown.depth.screw-gum.high':
    'The neck’s shoulder lies {level} from the reference CEJ: higher than it is meant to lie; it may show.',

  'crown.grind.none': 'Nothing has to be ground off the abutment for {material}.',
  'crown.grind.some':
    'For {material} the hatched wedge has to come off the abutment: {depth} at its deepest, {volume} in all.',
  'crown.grind.lacking':
    'For {material} the hatched wedge has to come off the abutment: {depth} at its deepest, {volume} in all. Even then {lacking} of the wall is lacking over the least post: another material, or another axis.',
  'crown.turns.round': 'A round neck can stop at any depth.',
  'crown.turns.within': 'A part-turn changes the depth by {each}; as it stands, no turn is needed.',
  'crown.turns.deeper': 'A part-turn changes the depth by {each}; {count} deeper would bring it within.',
  'crown.turns.higher': 'A part-turn changes the depth by {each}; {count} higher would bring it within.',
  'crown.turns.never': 'A part-turn changes the depth by {each}; no whole number of them brings it within.',

  'crown.section.faciopalatal':
    'The planned crown cut through the implant’s axis, palatal left, facial right: {answer}',
  'crown.section.mesiodistal':
    'The planned crown cut through the implant’s axis, distal left, mesial right. The readings say the same in numbers.',
  'crown.section.height': 'crown {height}',
  'crown.section.heading': 'Facial–palatal',
  'crown.section.bar': '5 mm',

  'crown.tag.correction': 'turn',
  'crown.tag.emergence': 'emergence',
  'crown.tag.grind': 'to grind',
  'crown.tag.lower': 'to lower',
  'crown.tag.contact': 'contact to bone',
  'crown.tag.margin': 'below the margin',
  'crown.tag.cej': 'from the CEJ',
  'crown.tag.line': 'incisal line',
  'crown.tag.room': 'to spare',
  'crown.tag.clearance': 'to the bite',
  'crown.tag.height': 'crown height',
} as const;
