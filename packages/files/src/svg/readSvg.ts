import { ok, type Result, refuse } from '@panewright/quantity';
import { type Affine, chained, isFlattening, mapCurve, scaling, shifting } from '../curve/affine.ts';
import type { Drawing, Stroke } from '../curve/drawing.ts';
import type { FileNote, FileRefusal, FileUnit } from '../fileRefusal.ts';
import { readXml, type XmlElement } from './readXml.ts';
import { isShape, shapeCurves } from './shapeCurves.ts';
import { svgPage, viewBoxOf } from './svgPage.ts';
import { localName, placeOf, transformOf, userLengths, type Viewport } from './svgValues.ts';

const OFFERED: readonly FileUnit[] = ['px', 'mm', 'px90', 'px72', 'pt', 'in', 'cm'];
/** Elements whose children are drawn where they stand. */
const GROUPS = new Set(['g', 'a', 'switch', 'svg']);
/** What is seen and draws no outline. */
const SEEN = new Set(['text', 'image', 'foreignObject']);
const MOST_SHAPES = 50_000;
const MOST_NESTING = 64;

/**
 * An SVG drawing: paths, basic shapes, groups with transforms, `use` of what is defined. Colours, widths and style sheets
 * say nothing of an outline and are passed over; what is hidden is left out.
 *
 * @source sources.md#svg2-paths, sources.md#svg2-shapes, sources.md#svg2-transforms
 */
export function readSvg(text: string): Result<Drawing, FileRefusal> {
  const xml = readXml(text);
  if (!xml.ok) return xml;
  const root = xml.value;
  if (localName(root.name) !== 'svg')
    return refuse({ code: 'FILE_UNREADABLE_AT', line: root.line, wanted: '<svg>', found: `<${root.name}>` });
  const page = svgPage(root);
  if (!page.ok) return page;
  const { view, stretch, ...size } = page.value;
  const walk = new Walk(root);
  const map = scaling(1, -stretch);
  const bad = walk.children(root, { map, view, within: [], isHidden: isHidden(root, false) });
  if (bad) return refuse(bad);
  return ok({ strokes: walk.strokes, ...size, offered: OFFERED, notes: walk.notes() });
}

interface Context {
  readonly map: Affine;
  readonly view: Viewport;
  /** Ids being used, outermost first. */
  readonly within: readonly string[];
  readonly isHidden: boolean;
  readonly layer?: string;
  readonly name?: string;
}

class Walk {
  readonly strokes: Stroke[] = [];
  readonly #byId = new Map<string, XmlElement>();
  readonly #left = new Map<string, number>();
  #hidden = 0;
  #style: number | undefined;
  #visits = 0;

  constructor(root: XmlElement) {
    const open = [root];
    while (open.length > 0) {
      const element = open.pop()!;
      const id = element.attributes.get('id');
      if (id !== undefined && !this.#byId.has(id)) this.#byId.set(id, element);
      const style = element.name === 'style' ? element.text : (element.attributes.get('style') ?? '');
      const says = element.name === 'style' ? /\b(?:display|visibility|transform)\s*:/ : /\btransform\s*:/;
      if (says.test(style)) this.#style = Math.min(this.#style ?? Number.POSITIVE_INFINITY, element.line);
      open.push(...element.children);
    }
  }

  notes(): readonly FileNote[] {
    return [
      ...[...this.#left].map(([kind, count]): FileNote => ({ code: 'KIND_LEFT_OUT', kind, count })),
      ...(this.#hidden > 0 ? [{ code: 'HIDDEN_LEFT_OUT', count: this.#hidden } as const] : []),
      ...(this.#style === undefined ? [] : [{ code: 'STYLE_SHEET_NOT_READ', line: this.#style } as const]),
    ];
  }

  /** Letters among the shapes are not drawn by any rule, so they are what is left of a broken tag. */
  children(element: XmlElement, context: Context): FileRefusal | undefined {
    const stray = element.text.trim().slice(0, 40);
    if (stray !== '')
      return { code: 'FILE_UNREADABLE_AT', line: element.line, wanted: 'an element', found: stray };
    for (const child of element.children) {
      const bad = this.#element(child, context);
      if (bad) return bad;
    }
    return undefined;
  }

  #element(element: XmlElement, outer: Context): FileRefusal | undefined {
    const kind = localName(element.name);
    if (kind === undefined) return undefined;
    if (SEEN.has(kind)) this.#left.set(kind, (this.#left.get(kind) ?? 0) + 1);
    if (!GROUPS.has(kind) && !isShape(kind) && kind !== 'use') return undefined;
    if (++this.#visits > MOST_SHAPES)
      return { code: 'FILE_TOO_LARGE', what: 'elements', found: this.#visits, most: MOST_SHAPES };
    if (isUndisplayed(element)) {
      this.#hidden++;
      return undefined;
    }
    const own = transformOf(element);
    if (!own.ok) return own.refusal;
    if (isFlattening(own.value))
      return { code: 'NUMBER_OUT_OF_RANGE', place: placeOf(element), what: 'transform', value: 0 };
    const context = {
      ...outer,
      ...namesOf(element, kind),
      map: chained(outer.map, own.value),
      isHidden: isHidden(element, outer.isHidden),
    };
    if (kind === 'use') return this.#use(element, context);
    if (kind === 'svg') return this.#view(element, context, element);
    return isShape(kind) ? this.#shape(kind, element, context) : this.children(element, context);
  }

  #shape(
    kind: string,
    element: XmlElement,
    { map, view, isHidden: hidden, layer, name }: Context,
  ): FileRefusal | undefined {
    if (hidden) {
      this.#hidden++;
      return undefined;
    }
    const subpaths = shapeCurves(kind, element, view);
    if (!subpaths.ok) return subpaths.refusal;
    for (const curves of subpaths.value)
      this.strokes.push({
        curves: curves.map((curve) => mapCurve(map, curve)),
        ...(layer === undefined ? {} : { layer }),
        ...(name === undefined ? {} : { name }),
        place: placeOf(element),
      });
    return undefined;
  }

  #use(element: XmlElement, context: Context): FileRefusal | undefined {
    const place = placeOf(element);
    const link = [...element.attributes].find(([key]) => key === 'href' || key.endsWith(':href'))?.[1] ?? '';
    const name = link.replace(/^#/, '');
    const target = link.startsWith('#') ? this.#byId.get(name) : undefined;
    if (target === undefined) return { code: 'REFERENCE_MISSING', place, name: link };
    if (context.within.includes(name)) return { code: 'REFERENCE_CIRCULAR', place, name };
    const within = [...context.within, name];
    if (within.length > MOST_NESTING)
      return { code: 'FILE_TOO_LARGE', what: 'nesting', found: within.length, most: MOST_NESTING };
    const at = userLengths(element, ['x', 'y'], context.view);
    if (!at.ok) return at.refusal;
    const map = chained(context.map, shifting(at.value.x ?? 0, at.value.y ?? 0));
    const inner = { ...context, within, map };
    if (localName(target.name) === 'symbol') return this.#view(target, inner, element);
    return this.#element(target, inner);
  }

  /** A nested view or a symbol, fitted into the box that `sized` gives; without a view box it only moves. */
  #view(element: XmlElement, context: Context, sized: XmlElement): FileRefusal | undefined {
    const box = viewBoxOf(element);
    if (!box.ok) return box.refusal;
    const read = userLengths(sized, ['x', 'y', 'width', 'height'], context.view);
    if (!read.ok) return read.refusal;
    const { x = 0, y = 0, width = context.view.width, height = context.view.height } = read.value;
    const corner = sized === element ? shifting(x, y) : shifting(0, 0);
    if (box.value === undefined)
      return this.children(element, {
        ...context,
        view: { width, height },
        map: chained(context.map, corner),
      });
    if (!(width > 0 && height > 0)) return undefined;
    const { x: left, y: top, ...view } = box.value;
    const [across, down] = [width / view.width, height / view.height];
    const fit = element.attributes.get('preserveAspectRatio') ?? '';
    const even = /\bslice\b/.test(fit) ? Math.max(across, down) : Math.min(across, down);
    const [sx, sy] = /\bnone\b/.test(fit) ? [across, down] : [even, even];
    const part = (word: string) => (/Min/.test(word) ? 0 : /Max/.test(word) ? 1 : 0.5);
    const align = /x(?:Min|Mid|Max)Y(?:Min|Mid|Max)/.exec(fit)?.[0] ?? 'xMidYMid';
    const slack = shifting(
      (width - sx * view.width) * part(align.slice(0, 4)),
      (height - sy * view.height) * part(align.slice(4)),
    );
    const map = chained(context.map, corner, slack, scaling(sx, sy), shifting(-left, -top));
    return this.children(element, { ...context, view, map });
  }
}

const styled = (element: XmlElement, property: string): string | undefined => {
  const inline = new RegExp(`(?:^|;)\\s*${property}\\s*:\\s*([a-z]+)`).exec(
    element.attributes.get('style') ?? '',
  );
  return inline?.[1] ?? element.attributes.get(property)?.trim();
};

const isUndisplayed = (element: XmlElement) => styled(element, 'display') === 'none';

function isHidden(element: XmlElement, outer: boolean): boolean {
  const visibility = styled(element, 'visibility');
  if (visibility === 'hidden' || visibility === 'collapse') return true;
  return visibility === 'visible' ? false : outer;
}

/** A group gives the layer (its label, id or class), a shape the name (its title or id). */
function namesOf(element: XmlElement, kind: string): Pick<Context, 'layer' | 'name'> {
  const { attributes, children } = element;
  const title = children.find(({ name }) => localName(name) === 'title')?.text.trim();
  const label = [...attributes].find(([key]) => key.endsWith(':label'))?.[1];
  const id = attributes.get('id');
  if (isShape(kind) || kind === 'use') {
    const name = title || label || id;
    return name ? { name } : {};
  }
  const layer = label || id || title || attributes.get('class');
  return layer ? { layer } : {};
}
