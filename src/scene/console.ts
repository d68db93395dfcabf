import { setConsoleFunction } from 'three';

/** React-three-fiber still makes one of three's old clocks; the page does not use it and cannot help it. */
const NOT_OURS = 'THREE.Clock: This module has been deprecated';

setConsoleFunction((kind, message, ...rest) => {
  if (!message.startsWith(NOT_OURS)) console[kind](message, ...rest);
});
