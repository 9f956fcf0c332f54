import { point, roundedPolygon } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import {
  type Choices,
  defaultCatalogue,
  deriveShapes,
  type HeldPoint,
  type Layout,
  marginCurve,
  meeting,
  type Plan,
  pairStrength,
  panelMargins,
  placing,
  USUAL_CLOTH,
} from '../index.ts';
import { jobOf, rectangle } from '../testing/jobs.ts';
import { patchAt } from './pocket.ts';

/** Nine windows of a camper: width and height in mm, gap of each glass in mm. */
const WINDOWS: readonly (readonly [number, number, number])[] = [
  [622, 368, 6.1],
  [622, 368, 6.1],
  [927, 521, 6.1],
  [927, 521, 6.1],
  [673, 414, 6.1],
  [673, 414, 6.1],
  [1029, 472, 7.6],
  [775, 445, 6.1],
  [1334, 622, 19.1],
];
const disc = defaultCatalogue.magnets.find(({ id }) => id === 'disc-20x5')!;
const friction = { low: 0.15, high: 0.35 };

const outlineOf = (width: number, height: number) => {
  const corners = [point(0, 0), point(width, 0), point(width, height), point(0, height)];
  const outline = roundedPolygon(corners, mm(75));
  if (!outline.ok) throw new Error(outline.refusal.code);
  return outline.value;
};

const layoutOf = (width: number, height: number): Layout =>
  placing({
    rim: { finished: outlineOf(width, height), edgeNames: Array.from({ length: 8 }, (_, k) => `e${k}`) },
    spacing: 609.6,
    upTo: 685.8,
    zones: [],
    reach: 10,
    centreOf: ({ at, inward }) => point(at.x + 40 * Math.cos(inward), at.y + 40 * Math.sin(inward)),
    apart: 76.2,
    hand: [],
    alike: 3.2,
  });

const layouts = WINDOWS.map(([width, height]) => layoutOf(width, height));

function held(at: number, gap: number): HeldPoint[] {
  const strength = pairStrength({ outside: disc, inside: disc, gap, hottest: 70, friction });
  if (!strength.ok) throw new Error(strength.refusal.code);
  return layouts[at]!.points.map(({ kind, centre: { x, y } }, number) => ({
    number,
    kind,
    x,
    y,
    strength: strength.value,
  }));
}

const loadOf = (at: number, wind: number) => {
  const [width, height] = WINDOWS[at]!;
  const area = width * height;
  return { ...USUAL_CLOTH, area, weight: area * 4.7e-6, openness: 0.05, wind, gustFactor: 1.66 };
};

let step = 0;
const pane = outlineOf(622, 368);
const pocket = patchAt(pane, point(311, 0), Math.PI / 2, 76.2)!;
const block = { kind: 'block', along: 40, across: 10 } as const;
const round = { kind: 'disc', radius: 10 } as const;
const meet = (face: typeof block | typeof round) =>
  meeting({
    place: { pocket, foot: point(311, 0), inward: Math.PI / 2 },
    room: pane,
    seam: 6,
    outside: face,
    ease: 1,
    glass: pane,
    inside: face,
    tapeMargin: 2,
    flange: 5,
  });

/** The same nine windows as a job, worked out once before it is edited. */
const nine = jobOf(WINDOWS.map(([width, height], k) => rectangle(`W${k}`, width / 25.4, height / 25.4, 2.5)));
deriveShapes(nine, defaultCatalogue);

function afterEdit(choices: Partial<Choices>): Plan {
  return deriveShapes({ ...nine, choices: { ...nine.choices, ...choices } }, defaultCatalogue);
}

export const benches: { name: string; run: () => unknown }[] = [
  {
    name: 'wind slider: margins of nine windows at another wind',
    run: () => {
      step++;
      return WINDOWS.map(([, , gap], at) => panelMargins(held(at, gap), loadOf(at, 4 + (step % 97) * 0.01)));
    },
  },
  {
    name: 'gap slider: one glass another thickness, its strength and margins anew',
    run: () => {
      step++;
      return panelMargins(held(0, 6.1 + step * 1e-4), loadOf(0, 5.5));
    },
  },
  {
    name: 'magnet slider: nine windows, three gaps, strengths and margins anew',
    run: () => {
      step++;
      return WINDOWS.map(([, , gap], at) => panelMargins(held(at, gap + step * 1e-4), loadOf(at, 5.5)));
    },
  },
  {
    name: 'margin against 41 wind speeds for one panel',
    run: () =>
      marginCurve(
        held(2, 6.1),
        loadOf(2, 5.5),
        Array.from({ length: 41 }, (_, k) => k / 2),
      ),
  },
  {
    name: 'plan of nine windows before the lay after another wind',
    run: () => afterEdit({ weather: { ...nine.choices.weather, wind: 4 + (++step % 97) * 0.01 } }),
  },
  {
    name: 'plan of nine windows before the lay after another magnet',
    run: () => afterEdit({ hold: { ...nine.choices.hold, outside: ++step % 2 ? 'disc-15x3' : 'disc-20x5' } }),
  },
  {
    name: 'plan of nine windows before the lay after another glass of one',
    run: () => {
      const layers = [{ kind: 'glass' as const, thickness: 4 + (++step % 97) * 0.01 }];
      const openings = nine.openings.map((one, k) =>
        k === 2 ? { ...one, glazing: { ...one.glazing, layers } } : one,
      );
      return deriveShapes({ ...nine, openings }, defaultCatalogue);
    },
  },
  { name: 'layout of one panel without obstructions', run: () => layoutOf(1029, 472) },
  { name: 'where two discs can meet', run: () => meet(round) },
  { name: 'where two blocks can meet', run: () => meet(block) },
];
