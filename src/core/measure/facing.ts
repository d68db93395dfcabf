/** How far a neck that looks the same every `360/n` degrees is turned off its nearest facing (rule M13): degrees in (−180/n, 180/n]. */
export function facingOf(index: number, roll: number): number {
  const turn = 360 / index;
  const over = turn / 2 - roll;
  return turn / 2 - (over - turn * Math.floor(over / turn));
}
