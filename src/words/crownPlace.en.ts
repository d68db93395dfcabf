/** Words of the place where the crown is looked at. */
export const crownPlaceWords = {
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
  'crown.pose': 'Implant',
  'crown.poseNote': 'tilt and depth',
  'crown.kept': 'Distances kept',
  'crown.keptNote': 'about the crown',
  'crown.usual': 'to {value}',

  'crown.lead.within': 'Suits.',
  'crown.lead.near': 'With care.',
  'crown.lead.beyond': 'Does not suit.',

  'crown.brief.straight': '{status}: channel straight, shoulder {depth} deep',
  'crown.brief.bent': '{status}: channel turned {turn}, shoulder {depth} deep',
  'crown.brief.none': '{status}: no palatal channel, shoulder {depth} deep',
  'crown.brief.straightAtCej': '{status}: channel straight, {level} from the CEJ',
  'crown.brief.bentAtCej': '{status}: channel turned {turn}, {level} from the CEJ',
  'crown.brief.noneAtCej': '{status}: no palatal channel, {level} from the CEJ',
  'crown.brief.onePiece': '{status}: a one-piece abutment takes no screw',
  'crown.brief.cemented': '{status}: axis {offset} off line, margin {depth} deep',

  'crown.onePiece': 'The abutment is one piece with the implant and takes no screw: its crown is cemented.',
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
  'crown.grindBrief.none': 'Nothing to grind off the post.',
  'crown.grindBrief.some': 'To grind off the post: {depth}, {volume}.',
  'crown.grindBrief.lacking':
    'To grind off the post: {depth}, {volume}; even then {lacking} of the wall is lacking.',
  'crown.turns.round': 'A round neck can stop at any depth.',

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
