/** Section and wall profile share one depth scale and one crest line: CSS px on screen, mm of the model. */
export const PX_PER_MM = 14.6;
/** Where the crest's level (t = 0) lies, px from the top of both drawings. */
export const CREST_Y = 222;
export const DRAWING_HEIGHT = 470;

/** Height on the drawing of a level along the axis, mm apical of the entry. */
export const yOf = (level: number): number => CREST_Y + level * PX_PER_MM;

/** Type size of the drawings' tags, px of the drawing: at a desk, and before a class, where a wide screen draws them larger still. */
export const TAG_SIZE = { desk: 14, class: 19 } as const;
