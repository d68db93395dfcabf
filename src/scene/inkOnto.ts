/** Parts of the ink that are for the hand, not for a picture. */
const FOR_THE_HAND = '.handles';

const has = (paint: string): boolean =>
  paint !== 'none' && !paint.startsWith('url') && paint !== 'transparent';
const number = (text: string, fallback: number): number => {
  const value = Number.parseFloat(text);
  return Number.isFinite(value) ? value : fallback;
};
const lengthOf = (element: Element, name: string): number => number(element.getAttribute(name) ?? '', 0);

/** The outline of a shape; null where it has none. */
function outlineOf(element: Element): Path2D | null {
  const path = new Path2D();
  switch (element.tagName) {
    case 'path':
      return new Path2D(element.getAttribute('d') ?? '');
    case 'circle':
      path.arc(lengthOf(element, 'cx'), lengthOf(element, 'cy'), lengthOf(element, 'r'), 0, 2 * Math.PI);
      return path;
    case 'rect':
      path.rect(
        lengthOf(element, 'x'),
        lengthOf(element, 'y'),
        lengthOf(element, 'width'),
        lengthOf(element, 'height'),
      );
      return path;
    case 'polygon':
      return new Path2D(`M${element.getAttribute('points') ?? ''}Z`);
    default:
      return null;
  }
}

/** Fill and stroke of an element as the page's styles have them, in the order in which they are painted. */
function paint(
  context: CanvasRenderingContext2D,
  style: CSSStyleDeclaration,
  fill: () => void,
  stroke: () => void,
): void {
  const alpha = context.globalAlpha;
  const filled = () => {
    if (!has(style.fill)) return;
    context.globalAlpha = alpha * number(style.fillOpacity, 1);
    context.fillStyle = style.fill;
    fill();
  };
  const stroked = () => {
    if (!has(style.stroke)) return;
    context.globalAlpha = alpha * number(style.strokeOpacity, 1);
    context.strokeStyle = style.stroke;
    context.lineWidth = number(style.strokeWidth, 1);
    context.lineJoin = style.strokeLinejoin as CanvasLineJoin;
    context.lineCap = style.strokeLinecap as CanvasLineCap;
    stroke();
  };
  const order = style.paintOrder.startsWith('stroke') ? [stroked, filled] : [filled, stroked];
  for (const lay of order) lay();
  context.globalAlpha = alpha;
}

/** A line of text with its spans one behind the other. */
function write(context: CanvasRenderingContext2D, element: Element): void {
  const parts = [...element.childNodes].map((node) => ({
    text: node.textContent ?? '',
    style: getComputedStyle(node instanceof Element ? node : element),
    gap: node instanceof Element ? lengthOf(node, 'dx') : 0,
  }));
  const fontOf = (style: CSSStyleDeclaration) =>
    `${style.fontStyle} ${style.fontWeight} ${style.fontSize} ${style.fontFamily}`;
  const widths = parts.map(({ text, style, gap }) => {
    context.font = fontOf(style);
    return gap + context.measureText(text).width;
  });
  const whole = widths.reduce((sum, width) => sum + width, 0);
  const { textAnchor } = getComputedStyle(element);
  const anchored = textAnchor === 'middle' ? whole / 2 : textAnchor === 'end' ? whole : 0;
  let x = lengthOf(element, 'x') - anchored;
  const y = lengthOf(element, 'y');
  parts.forEach(({ text, style, gap }, i) => {
    context.font = fontOf(style);
    const at = x + gap;
    paint(
      context,
      style,
      () => context.fillText(text, at, y),
      () => context.strokeText(text, at, y),
    );
    x += widths[i];
  });
}

/**
 * Draws SVG that stands on the page onto a canvas, with the page's own styles and fonts: shapes, texts, groups with their transforms and opacities. Not known, and not
 * needed for the stage's ink: patterns, clips, masks. What is there for the hand is left out.
 */
export function inkOnto(context: CanvasRenderingContext2D, element: SVGElement): void {
  if (element.matches(FOR_THE_HAND)) return;
  const style = getComputedStyle(element);
  if (style.display === 'none') return;
  context.save();
  const moved =
    element instanceof SVGGraphicsElement ? element.transform.baseVal.consolidate()?.matrix : undefined;
  if (moved) context.transform(moved.a, moved.b, moved.c, moved.d, moved.e, moved.f);
  context.globalAlpha *= number(style.opacity, 1);
  if (element.tagName === 'text') write(context, element);
  else {
    const outline = outlineOf(element);
    if (outline)
      paint(
        context,
        style,
        () => context.fill(outline, style.fillRule as CanvasFillRule),
        () => context.stroke(outline),
      );
    for (const child of element.children) if (child instanceof SVGElement) inkOnto(context, child);
  }
  context.restore();
}
