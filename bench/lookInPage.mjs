// Runs in the page: how far its letters and controls stand off what is behind them, and how large what is pressed is.

/**
 * Contrast as WCAG 2.2 defines it (relative luminance of sRGB, success criteria 1.4.3 and 1.4.11), boxes in CSS pixels
 * (2.5.8, with its exceptions for links in a sentence and for targets that keep their distance).
 */
export function lookAtPage() {
  const parse = (text) => {
    const [r, g, b, a = 1] = text.match(/[\d.]+/g).map(Number);
    return [r, g, b, a];
  };
  const over = ([r, g, b, a], [R, G, B]) => [
    r * a + R * (1 - a),
    g * a + G * (1 - a),
    b * a + B * (1 - a),
    1,
  ];
  const luminance = (colour) => {
    const [r, g, b] = colour.slice(0, 3).map((one) => {
      const c = one / 255;
      return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (one, other) => {
    const [a, b] = [luminance(one), luminance(other)];
    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
  };
  /** What lies behind an element: the colours of all it stands in, from the outermost. */
  const behind = (element) => {
    const chain = [];
    for (let one = element; one; one = one.parentElement) chain.unshift(one);
    let colour = parse(getComputedStyle(document.body).backgroundColor);
    for (const one of chain) colour = over(parse(getComputedStyle(one).backgroundColor), colour);
    return colour;
  };
  const faded = (element) => {
    let share = 1;
    for (let one = element; one; one = one.parentElement) share *= Number(getComputedStyle(one).opacity);
    return share;
  };
  /** What letters of a drawing stand on: their own rim, or the shape they follow and lie within. */
  const underDrawn = (element) => {
    const { paintOrder, stroke } = getComputedStyle(element);
    if (paintOrder.startsWith('stroke') && stroke !== 'none') return parse(stroke);
    const shape = element.previousElementSibling;
    if (!(shape instanceof SVGRectElement)) return undefined;
    const [inner, outer] = [element.getBoundingClientRect(), shape.getBoundingClientRect()];
    const lies = inner.left >= outer.left && inner.right <= outer.right && inner.top >= outer.top;
    const { fill } = getComputedStyle(shape);
    return lies && fill !== 'none' ? parse(fill) : undefined;
  };
  const isSeen = (element) =>
    element.checkVisibility({ checkOpacity: true, checkVisibilityCSS: true }) &&
    !element.closest('.only-heard, .skip, [aria-hidden="true"], :disabled, [popover]:not(:popover-open)');
  const top = document.querySelector('dialog:modal') ?? document.body;
  const said = (element) =>
    `${element.tagName.toLowerCase()}.${element.getAttribute('class') ?? ''} ${(element.ariaLabel || element.textContent).trim().slice(0, 40)}`;

  const texts = [];
  const walker = document.createTreeWalker(top, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const element = walker.currentNode.parentElement;
    if (!walker.currentNode.data.trim() || !element || !isSeen(element)) continue;
    const style = getComputedStyle(element);
    const size = Number.parseFloat(style.fontSize);
    const isLarge = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    const ground =
      (element.closest('svg') && underDrawn(element)) ||
      behind(element.closest('svg')?.parentElement ?? element);
    const [r, g, b, a] = parse(element.closest('svg') ? style.fill : style.color);
    texts.push({
      ratio: contrast(over([r, g, b, a * faded(element)], ground), ground),
      asked: isLarge ? 3 : 4.5,
      what: said(element),
    });
  }

  const PRESSED =
    'a[href], button, input, select, textarea, summary, [role="button"], [role="slider"], [tabindex="0"]';
  const targets = [...top.querySelectorAll(PRESSED)].filter(isSeen).map((element) => {
    const whole =
      (element.matches('input[type="checkbox"], input[type="radio"]') && element.closest('label')) || element;
    const box = whole.getBoundingClientRect();
    const inSentence =
      getComputedStyle(element).display.startsWith('inline') &&
      [...element.parentElement.childNodes].some((one) => one.nodeType === 3 && one.data.trim());
    return { element, box, least: Math.min(box.width, box.height), inSentence };
  });
  const small = (one) => one.least < 24 && !one.inSentence;
  /** A circle of 24 across, in the middle of a small target, must touch no other target and no other such circle. */
  const isFree = (one) => {
    const [x, y] = [one.box.x + one.box.width / 2, one.box.y + one.box.height / 2];
    return targets.every((other) => {
      if (other === one || other.element.contains(one.element) || one.element.contains(other.element))
        return true;
      const { left, right, top: up, bottom } = other.box;
      if (small(other)) return Math.hypot((left + right) / 2 - x, (up + bottom) / 2 - y) >= 24;
      return Math.hypot(x - Math.min(Math.max(x, left), right), y - Math.min(Math.max(y, up), bottom)) >= 12;
    });
  };

  const edges = [...top.querySelectorAll('input, select, textarea, button')]
    .filter(isSeen)
    .flatMap((element) => {
      const style = getComputedStyle(element);
      if (Number.parseFloat(style.borderBottomWidth) === 0) return [];
      const line = parse(style.borderBottomColor);
      if (line[3] === 0) return [];
      const ground = behind(element.parentElement);
      return [{ ratio: contrast(over(line, ground), ground), asked: 3, what: said(element) }];
    });
  const focus = parse(
    (() => {
      const probe = document.body.appendChild(document.createElement('i'));
      probe.style.color = 'var(--focus)';
      const found = getComputedStyle(probe).color;
      probe.remove();
      return found;
    })(),
  );
  const rings = targets.map(({ element }) => ({
    ratio: contrast(focus, behind(element.closest('svg')?.parentElement ?? element.parentElement)),
    asked: 3,
    what: said(element),
  }));
  return {
    texts,
    edges,
    rings,
    targets: targets.map((one) => ({
      least: one.least,
      what: said(one.element),
      kind: one.inSentence ? 'sentence' : !small(one) ? 'large' : isFree(one) ? 'free' : 'small',
    })),
    sideways: document.documentElement.scrollWidth - innerWidth,
  };
}
