/** Words of the hand that strays: whose, what it breaks, what forgives it most. */
export const strayWords = {
  'stray.whose': 'Whose hand',
  'stray.published': '{who}, {guide}, {where}: {platform}, {angle}',
  'stray.own.bench': 'your own at the bench, {count} attempts',
  'stray.own.screen': 'your own at the screen, {count} attempts',
  'stray.note':
    'Only means are published: the hand is taken to stray alike in all directions and without a habit (a proposal of this project).',
  'stray.noteOwn': 'By mean and SD of your own attempts. A hand at a mouse is not a hand at a drill.',
  'stray.working': 'Placing it again and again: {share}.',
  'stray.done': 'Placed {count} times.',
  'stray.any': '{share} of {count} placements break a limit.',
  'stray.anyThere': 'There {share} of {count} placements break a limit.',
  'stray.none': 'No limit is broken in {count} placements.',
  'stray.limit': 'Limit broken',
  'stray.share': 'as planned',
  'stray.shareThen': 'most forgiving',
  'stray.key.sound': 'nothing broken',
  'stray.key.broken': 'a limit broken',
  'stray.key.mean': 'mean, with its SD',
  'stray.heading': 'What forgives this hand most',
  'stray.searching': 'Looking for the pose that forgives it most.',
  'stray.lifts':
    'The worst margin grows from {before} to {after} SD of this hand; then “{reading}” holds it back.',
  'stray.held':
    'No pose nearby forgives it more: “{reading}” holds this one back, {score} SD from being broken.',
  'stray.unmoved': 'Nothing that is judged here is moved by a hand.',
  'stray.take': 'Take this pose',
  'stray.keep': 'Keep it for comparing',
  'stray.caution': 'A model of a hand on a model of a ridge: it ranks poses, it foretells no case.',
  'edit.forgiving': 'pose that forgives a hand most',
} as const;
