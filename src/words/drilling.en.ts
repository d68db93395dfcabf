/** Words of the drilling: kit, depths, the order of drilling, reach, and what a rehearsal shows. */
export const drillingWords = {
  'kit.generic': 'Generic kit',
  'kit.implant': 'implant',
  'kit.drillAbout': '{tool}: point {point}, marks {marks} counted {from}, {length} from tip to head, {speed}',
  'kit.neckAbout': '{tool}: {height} high, {length} from its notch to the head, {speed}',
  'kit.fromTip': 'from the tip',
  'kit.fromShoulder': 'from where the full diameter begins',
  'kit.speed': '{low} to {high}',
  'kit.assumed':
    'Generic kit in round steps, of no product. Speeds: common practice, no source. Lengths and the head of the handpiece: assumed.',
  'kit.apicalGap': 'The apex is slimmer than the last drill by {gap} all round: no bone touches it there.',

  'kit.fault.no-drill-narrow':
    'The narrowest drill of this kit is {value}; this implant takes at most {needed}.',
  'kit.fault.drill-too-short':
    '{tool}: {value} long to the head; its tip has to go {needed} below the crest.',
  'kit.fault.marks-too-short': '{tool}: its last mark is at {value}; the hole is read at {needed}.',
  'kit.fault.no-cutter-fits': 'No neck cutter of this kit fits the neck of this implant.',
  'kit.fault.nothing-to-drill': 'The implant stands so high that it reaches no bone on its axis.',

  'depth.title': 'Depths along the axis, from where it enters the bone',
  'depth.last-thread': 'Last thread below the crest',
  'depth.apex': 'Apex below the crest',
  'depth.full-depth': 'Full diameter of the drill below the crest',
  'depth.tip': 'Tip of the drill below the crest',
  'depth.mark': 'Mark to stop at',
  'depth.mark-lower-edge': 'Mark at the lower edge of the hole',
  'depth.mark-higher-edge': 'Mark at the higher edge of the hole',
  'depth.shoulder-over-gum': 'Shoulder above the present gum',
  'depth.neck-shoulder-notch': 'Neck cutter: shoulder notch above the crest',
  'depth.neck-base-notch': 'Neck cutter: neck notch below the crest',
  'depth.mouth': 'Mouth of the hole at the crest',
  'depth.thumb': 'Rule of thumb: implanted length + 2 mm for thin gum (common practice, no source)',
  'depth.thumb-spare': 'What the rule of thumb leaves below the apex',
  'depth.read.bone': 'read at the bone, where the axis enters it',
  'depth.read.lower-edge': 'read at the lower edge of the hole',
  'depth.read.higher-edge': 'read at the higher edge of the hole',
  'depth.read.crest-level': 'read at the level of the crest: the socket lies open here',
  'depth.read.gum': 'read at the gum, its thickness included',
  'depth.onMark': 'at the mark {mark}',
  'depth.pastMark': '{past} past the mark {mark}',
  'depth.beforeMarks': 'before the first mark',
  'depth.pastMarks': '{past} past the last mark {mark}',
  'depth.check.tip-to-floor': 'Drill above the {floor}',
  'depth.check.seat': 'Full diameter deeper than the apex',
  'depth.noEntry': 'The axis meets no bone: there is nothing to drill here.',

  'strip.planned-margin': 'planned gum margin',
  'strip.cej': 'reference CEJ',
  'strip.present-gum': 'present gum',
  'strip.shoulder': 'shoulder',
  'strip.crest-facial': 'crest, facial',
  'strip.crest-palatal': 'crest, palatal',
  'strip.entry': 'bone entry',
  'strip.last-thread': 'last thread',
  'strip.apex': 'apex',
  'strip.full-depth': 'full diameter',
  'strip.tip': 'tip of the drill',
  'strip.floor-margin': 'margin of the floor',
  'strip.floor.nose': 'floor of the nose',
  'strip.floor.sinus': 'floor of the sinus',

  'step.dry-test': 'Dry test',
  'step.direction': 'Pilot, then look',
  'step.full-depth': 'Pilot to full depth',
  'step.centring': 'Widen',
  'step.neck': 'Cut the neck',
  'step.seat': 'Seat',
  'step.look.dry-test':
    'The drill at rest on its place: direction against the teeth, the head past the crowns, the mark.',
  'step.look.direction':
    'Stop after the first 6 to 8 mm (common practice, no source). Check the direction: it can still be tilted.',
  'step.look.full-depth': 'Down to the mark. Check the direction once more, and the depth.',
  'step.look.centring': 'Check the centring before it: a wider drill takes up a shift, less and less a tilt.',
  'step.look.neck':
    'Neck notch {base} below the crest, shoulder notch {shoulder}. Check the mouth on every side.',
  'step.look.neckAbove': '{height} above it',
  'step.look.neckBelow': '{height} below it',
  'step.look.seat':
    'At {low} to {high} it takes {least} to {most}, stops left out. At most {torque} (common practice, no source).',
  'step.depth': '{depth} below the crest',
  'step.speed': '{low} to {high}, plenty of irrigation',
  'step.still': 'at rest',
  'step.turned': '{low} to {high}',
  'step.volume': 'at most {volume} of bone',
  'step.last.plain':
    'The {drill} is the last: the widest of the kit that is one thread depth narrower than the implant, at most {most}.',
  'step.last.dense':
    'The {drill} is the last: one wider in dense bone (class 1), still 0.2 mm narrower than the implant, at most {most}.',
  'step.last.soft':
    'The {drill} is the last: one narrower in soft bone (class 4), so that the thread holds (common practice, no source: undersize in soft bone).',
  'step.last.source':
    '{source}. In foam the torque went the same way: 48.9 N·cm dense, 22.6 soft and undersized, 11.7 soft and not ({evidence}).',

  'reach.drill': 'Head of the handpiece over the last drill',
  'reach.driver': 'Head of the handpiece over the driver',
  'reach.wrench': 'Head of the wrench',
  'reach.code.clear': 'It comes down {clearance} clear of the crown of {tooth}.',
  'reach.code.lengthen':
    'It meets the crown of {tooth}, {short} too soon: use the extension, and the dry test with it.',
  'reach.code.too-short': 'It meets the crown of {tooth}, {short} too soon; the extension is not enough.',
  'reach.code.blocked': 'What stands between the crowns is too wide for the gap at {tooth} by {by}.',
  'reach.head': 'head {height} above the bone at full depth',
  'reach.opening.enough': 'The mouth has to open {needed} for it; {stated} is assumed.',
  'reach.opening.short':
    'The mouth would have to open {needed} for it; {stated} is assumed. Use a shorter drill first.',
  'reach.caution':
    'Only the upper crowns are looked at, and the opening of the mouth as one number. Lips, cheek, lower teeth and the arm of the wrench are left out.',

  'drillFault.past-floor': 'Drilled {value} past the {floor}.',
  'drillFault.in-canal': 'Drilled {value} into the nasopalatine canal.',
  'drillFault.near-floor': 'The drill ended {value} from the {floor}, inside the margin of {limit}.',
  'drillFault.drilled-short':
    'Drilled {value} short: the implant would stand so much too high, its apex on the floor of the hole.',
  'drillFault.drilled-deep': 'Drilled {value} deeper than planned.',
  'drillFault.neck-short': 'The neck is cut {value} short: the neck would press into the bone.',
  'drillFault.neck-deep': 'The neck is cut {value} too deep.',
  'drillFault.followed-ridge':
    'The drill followed the ridge and not the teeth: it leans {value} off the plan, as the ridge does.',
  'drillFault.drifted-facially': 'The drill drifted {value} facially on its way down.',
  'drillFault.wandered-palatally': 'The drill entered {value} palatally of the plan.',
  'drillFault.oval': 'The hole is oval by {value}.',
  'drillFault.skipped-drill': 'The {value} drill came before the {limit} one.',
  'drillFault.too-fast': '{value}, more than the {limit} usual for this drill.',
  'drillFault.dry': 'Drilled without irrigation.',
  'drillFault.mended': 'The {tool} takes it up.',
  'drillFault.ours': 'Threshold of this project: {limit}.',
  'drillFault.heat':
    'Bone held at {celsius} °C for {minutes} min is harmed ({source}). No temperature is computed here.',

  'pass.number': 'Pass {number}',
  'pass.crest': 'Off the plan at the crest',
  'pass.apex': 'Off the plan at the apex',
  'pass.apexCarried': 'Off the plan at the apex, if it went on so',
  'pass.angle': 'Angle to the planned axis',
  'pass.depth': 'Depth of the full diameter',
  'pass.depthOff': 'Deeper than planned',
  'pass.volume': 'Bone taken, at most',
  'pass.offBoth': '{first}, {second}',
  'pass.offNone': 'on it',
  'pass.facially': '{amount} facially',
  'pass.palatally': '{amount} palatally',
  'pass.mesially': '{amount} mesially',
  'pass.distally': '{amount} distally',
  'pass.takenUp': 'taken up by the {tool}',
  'pass.standing': 'still to be taken up',

  'verdict.not-begun': 'Nothing drilled yet.',
  'verdict.as-planned': 'As planned so far, in this model.',
  'verdict.mind': 'On the plan, in this model; mind what stands below.',
  'verdict.mend': 'Something went off the plan. Gone on with as planned, the hole still ends covered.',
  'verdict.open':
    'Gone on with as planned, a void of {void} stays open round the implant: leave it, let it heal, or take a shape that fills it.',
  'verdict.stop': 'Stop: a neighbouring space was entered.',

  'drilling.caution.force':
    'No force is modelled. The drill goes where it is sent; how hard it is pushed, how the bone pulls it aside and what the hand feels are not in this model.',
  'drilling.caution.heat':
    'Heat depends on drill, pressure, water and time; only the published threshold is shown: {celsius} °C for {minutes} min ({source}).',
  'drilling.caution.volume':
    'Volumes are upper bounds: what a drill takes at most, not what can be collected.',
  'drilling.caution.depth':
    'Depths count along the axis from where it enters the bone, a socket taken as filled. Read the mark where the plan says.',
} as const;
