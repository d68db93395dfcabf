import { expect, test } from 'vitest';
import { checkVolumes } from '../support/volumeCheck.ts';

test('over 300 rehearsals bone removed and crescent left agree with manifold-3d, within 0.5 % or 0.05 mm³', async () => {
  const { off, crescents } = await checkVolumes(300);
  const share = (q: number) => off[Math.floor(q * (off.length - 1))].toFixed(2);
  console.info(
    `volumes: ${off.length} looked at, ${crescents} crescents; of what is allowed, median ${share(0.5)}, 95 % ${share(0.95)}, worst ${share(1)}`,
  );
  expect(crescents).toBeGreaterThan(100);
});
