/** Words of keeping a plan on the machine, of links and codes, of working without a network. */
export const keepWords = {
  'kept.fresh': 'Unchanged',
  'kept.keeping': 'Being kept',
  'kept.kept': 'Kept here',
  'kept.full': 'Not kept',
  'kept.refused': 'Not kept',
  'kept.shown': 'Only shown',
  'kept.free': 'Only shown',
  'kept.never': 'Keeps nothing',
  'kept.file': 'In a file',
  'kept.takeOver': 'Take over',
  'kept.workHere': 'Work here instead',
  'kept.take': 'take over from the other tab',
  'kept.fullNotice':
    'This browser’s storage for the page is full: the last changes are not kept on this machine. Nothing on the table is lost. Save the plan as a file.',
  'kept.refusedNotice':
    'This browser lets the page store nothing: the last changes are not kept on this machine. Nothing on the table is lost. Save the plan as a file.',
  'kept.shownNotice':
    'The plan is open in another tab of this browser, which keeps it. Here it is only shown and nothing can be changed. Go on there; or work here instead, with all that is finished there: then that tab only shows it.',
  'kept.keptBack':
    'The other tab cannot keep its last changes on this machine, so it does not let the plan go. Save the plan as a file there, or close that tab.',
  'kept.freeNotice':
    'The other tab has let the plan go. Take it over to go on here with what that tab kept last; undo brings back what is shown now.',
  'kept.recovered': 'The newest state on this machine was damaged; the one before it is open.',

  'keep.heading': 'On this machine',
  'keep.note':
    'Every finished change is kept in this browser, on this machine only. Undo goes back as far as the page was opened.',
  'keep.lasting': 'The browser has agreed not to clear it when space runs short.',
  'keep.ask': 'Ask the browser not to clear it',
  'keep.declined': 'The browser may clear it when space runs short: save what matters as a file.',
  'keep.recent': 'On the table before',
  'keep.moment': 'put aside {moment}',

  'drop.hint': 'Let go to open the plan',

  'link.open': 'Link and QR code',
  'link.heading': 'Hand the plan over by link',
  'link.note':
    'The whole plan stands in the address, after #. Nothing is sent anywhere: whoever opens the link has the plan. Title, note and names of your own are left out.',
  'link.address': 'Link',
  'link.copy': 'Copy the link',
  'link.copied': 'Copied',
  'link.notCopied': 'The browser does not allow it: press Ctrl or Cmd and C in the field.',
  'link.length': '{count} characters',
  'link.code': 'The link as a QR code of {side} by {side2} squares',
  'link.codeNote':
    'Point a telephone’s camera at it. {share} of the squares may be hidden or dirty and it can still be read.',
  'link.large': 'Show it large',
  'link.small': 'Show it small',
  'link.noCode':
    'The link is too long for a QR code: this plan holds a long rehearsal. The link itself works.',
  'link.tooLong': 'The plan is too large for a link: it holds a very long rehearsal. Save it as a file.',
  'link.fromFile':
    'This page was opened from a file, so its address leads nowhere from another machine. Put this after the address of a page that others can open.',
  'link.edit': 'open the plan of a link',
  'link.opened': 'The plan of the link is open. Undo brings back the plan you had.',
  'link.refused': 'The link was not opened. {fault} The plan on the table is untouched.',
  'link.long': 'It is longer than is read.',
  'link.newer': 'A newer program wrote it.',
  'link.broken': 'It is damaged: cut off or mistyped. Copy the whole of it once more.',
  'link.unready': 'What reads it could not be loaded.',

  'offline.ready': 'The page works without a network from now on.',
  'offline.newer': 'A new version waits',
  'offline.take': 'Use it now',
  'offline.note':
    'A new version of the page is ready. Using it now loads the page anew; the plan is kept, the undo steps are not.',

  'portable.note':
    'The single file for a memory stick. All readings are here; the drilled hole is drawn in the cuts, not as an exact solid. It keeps nothing on this machine and installs nothing: save plans as files.',
} as const;
