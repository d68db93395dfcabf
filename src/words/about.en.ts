/** What each reading is, in one or two sentences: between which two points, along which line, with which sign. */
export const aboutWords = {
  'about.facial-wall-1mm':
    'Bone facially beside the implant, across its axis, at the level 1 mm apical of the entry. Void on the way is left out; minus: the implant stands out by so much.',
  'about.facial-wall-3mm':
    'Bone facially beside the implant, across its axis, at the level 3 mm apical of the entry. Void on the way is left out; minus: the implant stands out by so much.',
  'about.facial-wall-5mm':
    'Bone facially beside the implant, across its axis, at the level 5 mm apical of the entry. Void on the way is left out; minus: the implant stands out by so much.',
  'about.facial-wall-apex':
    'Bone facially beside the rim of the apical end, across the axis. Void on the way is left out; minus: the implant stands out by so much.',
  'about.facial-wall-thinnest':
    'The least bone facially across the axis, over all levels whose two ends lie the crest margin below the crest. It is judged at every level by that level’s own limit.',
  'about.facial-wall-true':
    'The smallest distance between implant and facial bone surface within 45° to either side of facial, not only straight across the axis.',
  'about.palatal-wall-1mm':
    'Bone palatally beside the implant, across its axis, at the level 1 mm apical of the entry. Void on the way is left out; minus: the implant stands out by so much.',
  'about.palatal-wall-3mm':
    'Bone palatally beside the implant, across its axis, at the level 3 mm apical of the entry. Void on the way is left out; minus: the implant stands out by so much.',
  'about.palatal-wall-5mm':
    'Bone palatally beside the implant, across its axis, at the level 5 mm apical of the entry. Void on the way is left out; minus: the implant stands out by so much.',
  'about.palatal-wall-apex':
    'Bone palatally beside the rim of the apical end, across the axis. Void on the way is left out; minus: the implant stands out by so much.',
  'about.palatal-wall-thinnest':
    'The least bone palatally across the axis, over all levels whose two ends lie the crest margin below the crest.',
  'about.palatal-wall-true':
    'The smallest distance between implant and palatal bone surface within 45° to either side of palatal, not only straight across the axis.',
  'about.centring-crest':
    'Half the facial wall less half the palatal wall, 1 mm apical of the entry: how far the implant would have to shift across its axis to stand in the middle of the bone, + facially.',
  'about.centring-apex':
    'Half the facial wall less half the palatal wall at the apical rim: how far the apex would have to shift across the axis to stand in the middle of the bone, + facially.',
  'about.centring-mesiodistal-crest':
    'Half the distance to the mesial root less half that to the distal root, from the axis 1 mm apical of the entry; + must shift mesially.',
  'about.centring-mesiodistal-incisal':
    'Half the distance to the mesial contact less half that to the distal contact, from the aim point of the axis; + must shift mesially.',
  'about.axis-to-roots-mesiodistal':
    'The axis against the bisector of the two neighbouring root axes, in the true front view; + the crown end leans mesially.',
  'about.shoulder-to-crest-facial':
    'Along the axis, from the most coronal bone at the implant’s facial side to the shoulder’s rim there; + above the bone.',
  'about.shoulder-to-crest-palatal':
    'Along the axis, from the most coronal bone at the implant’s palatal side to the shoulder’s rim there; + above the bone.',
  'about.shoulder-to-crest-mesial':
    'Along the axis, from the most coronal bone at the implant’s mesial side to the shoulder’s rim there; + above the bone.',
  'about.shoulder-to-crest-distal':
    'Along the axis, from the most coronal bone at the implant’s distal side to the shoulder’s rim there; + above the bone.',
  'about.shoulder-to-cej':
    'From the level of the reference tooth’s facial CEJ to the shoulder’s facial rim, square to the occlusal plane; + coronal of it.',
  'about.shoulder-to-gum-margin':
    'From the shoulder’s facial rim to the planned gum margin, square to the occlusal plane; + the shoulder lies below the margin.',
  'about.shoulder-to-gum-present':
    'From the present gum’s surface over the crest to the shoulder’s facial rim, square to the occlusal plane; + it shows today.',
  'about.incisal-line-offset':
    'The line joins the neighbours’ incisal edges where they face the gap. This is where the axis passes it, + facially. Cemented crowns aim at 0, a screw palatal of it.',
  'about.incisal-line-place':
    'Where along the incisal line the axis passes: 0 at the mesial neighbour’s corner, 1 at the distal one’s.',
  'about.incisal-line-angle':
    'The angle, seen in the plane of the axis and the facial direction, from the line “platform to incisal line” to the axis; + the axis points facially of it.',
  'about.axis-to-ridge-faciopalatal':
    'The axis less the ridge’s own inclination, seen in the true side view; + the crown end leans more facially.',
  'about.axis-to-ridge-mesiodistal':
    'The axis against the ridge, seen in the true front view; + the crown end leans mesially.',
  'about.axis-to-ridge-total': 'The true angle between the axis and the ridge’s own axis, in space.',
  'about.axis-to-crown-faciopalatal':
    'The axis less the planned crown’s, seen in the true side view; + the crown end leans more facially.',
  'about.axis-to-crown-mesiodistal':
    'The axis less the planned crown’s, seen in the true front view; + the crown end leans more mesially.',
  'about.axis-to-crown-total': 'The true angle between the axis and the planned crown’s axis, in space.',
  'about.root-mesial':
    'The smallest distance from the implant, up to its shoulder, to the mesial neighbour’s root; minus: the greatest depth inside the root.',
  'about.root-mesial-shoulder':
    'The smallest distance from the shoulder’s rim to the mesial neighbour’s root.',
  'about.root-distal':
    'The smallest distance from the implant, up to its shoulder, to the distal neighbour’s root; minus: the greatest depth inside the root.',
  'about.root-distal-shoulder':
    'The smallest distance from the shoulder’s rim to the distal neighbour’s root.',
  'about.apex-to-floor':
    'From the implant’s most apical point to the floor of the nose or sinus; minus: the floor is entered.',
  'about.apex-to-concavity':
    'The smallest distance from the apical third of the implanted length to the facial bone surface; minus: it stands out by so much.',
  'about.canal':
    'The smallest distance from the implant to the nasopalatine canal’s tube; minus: the greatest depth inside it.',
  'about.canal-level':
    'The level along the axis, apical of the entry, at which implant and canal are nearest.',
  'about.exposure-dehiscence':
    'Area of the threaded surface outside the bone and joined to the crest. Counted on the envelope of the thread’s crests.',
  'about.exposure-fenestration':
    'Area of the threaded surface outside the bone and not joined to the crest: a window, the floor and the canal among it.',
  'about.exposure-socket': 'Area of the threaded surface that stands in the void of the fresh socket.',
  'about.exposed-threads':
    'Greatest length of thread outside bone along one side of the implant, divided by the pitch.',
  'about.bone-contact': 'Share of the threaded surface that lies inside bone. Void does not count as bone.',
  'about.socket-gap-facial':
    'From the implant to the socket’s inner facial wall, across the axis at the crest’s level; minus: into the wall.',
  'about.contact-to-crest-mesial':
    'From the mesial neighbour’s contact point, square to the occlusal plane, to the level of the bone at its root there, as the studies measured; not to the crest of the gap. A fact of the site: no pose and no shape changes it.',
  'about.contact-to-crest-distal':
    'From the distal neighbour’s contact point, square to the occlusal plane, to the level of the bone at its root there, as the studies measured; not to the crest of the gap. A fact of the site: no pose and no shape changes it.',
  'about.access-exit':
    'Where a straight channel along the axis leaves the planned crown: palatally, facially, or within half a millimetre of the incisal edge.',
  'about.access-exit-to-edge':
    'From the incisal edge (of a premolar, the crest of its facial cusp) to where a straight channel along the axis leaves the planned crown; + palatally.',
  'about.access-exit-correction':
    'The least turn of the channel, about its bend a little coronal of the shoulder, that brings it out palatally of the edge. 0: a straight one is enough.',
  'about.emergence-mesial':
    'The angle between the axis and the crown’s mesial contour, straight from the shoulder’s rim to the gum margin. The published threshold holds for shoulders at bone only.',
  'about.emergence-distal':
    'The angle between the axis and the crown’s distal contour, straight from the shoulder’s rim to the gum margin. The published threshold holds for shoulders at bone only.',
  'about.emergence-facial':
    'The angle between the axis and the crown’s facial contour, straight from the shoulder’s rim to the planned gum margin. No limit: a study of facial angles found no difference.',
  'about.neck-facing':
    'How far the neck’s mark is turned off the nearest place in which it faces facially as it should.',
  'about.neck-facing-cost': 'How much higher the scalloped shoulder stands facially because of that turn.',
  'about.abutment-reduction-depth':
    'How far the abutment’s surface comes nearer to the planned crown’s surface than the material’s least thickness and the cement ask for, as far as the least post lets it be ground.',
  'about.abutment-reduction-volume':
    'What has to be ground off the abutment so that the crown over it is thick enough, its palatal side parallel to the crown’s; the least post is left.',
  'about.margin-reduction':
    'How far the finishing line has to go down the neck, along the axis, to hide facially below the planned margin; never nearer to the bone than the plan allows.',
  'about.crown-height':
    'From the middle of the shoulder along the axis to the occlusal level of the planned incisal edge.',
  'about.palatal-clearance':
    'The smallest distance of the planned crown, and of an abutment, to the lower incisors’ edges, closed and sliding forward along the neighbouring incisors; minus: it is met before them.',
  'about.tray-room':
    'While the implant heals: the smallest distance of the lower incisors’ edges, closed and sliding forward, to what stands in the gap (a healing part level with the gum, or a one-piece abutment as it is made), less the thickness of a clear tray borne by the teeth; + room to spare.',
  'about.mesiodistal-room':
    'From contact to contact across the gap, less the implanted diameter and 1.5 mm on each side; + room to spare.',
} as const;
