import { type GreyImage, halve } from './image.ts';
import type { OpenCv } from './openCv.ts';
import { MARKERS_PER_SHEET, SHEETS } from './referenceSheet.ts';
import { type PixelPoint, refineCorners } from './refineCorners.ts';

/** A marker seen in a photo. Corners: top left, top right, bottom right, bottom left as printed. */
export interface SeenMarker {
  readonly id: number;
  readonly corners: readonly PixelPoint[];
  /** Standard deviation of a corner, px, from the scatter along its edges. */
  readonly sigma: number;
  /** Width of the step from paper to black, px (10 % to 90 %): the photo's sharpness. */
  readonly edgeWidth: number;
}

const DICT_4X4_50 = 0;
const IDS = MARKERS_PER_SHEET * SHEETS;
/** Below this many pixels a marker's own cells are too small to be read reliably. */
const HALVE_ABOVE = 4e6;

/**
 * Finds the markers of the reference sheets and measures their corners.
 *
 * @returns by id, each id once; pixel coordinates with the centre of the top-left pixel at (0, 0)
 * @accuracy corners 0.05 px RMS on rendered photos; 0.15 to 0.3 px must be expected of a phone [from memory]
 * @source sources.md#opencv-aruco (finding), edge lines fitted here (measuring)
 */
export function detectMarkers(cv: OpenCv, image: GreyImage): readonly SeenMarker[] {
  const found = new Map<number, readonly PixelPoint[]>();
  const large = image.width * image.height > HALVE_ABOVE;
  const small = large ? halve(image) : image;
  const add = (seenIn: GreyImage) => {
    for (const [id, corners] of findQuads(cv, seenIn)) {
      const full =
        seenIn.width === image.width ? corners : corners.map((p) => ({ x: 2 * p.x + 0.5, y: 2 * p.y + 0.5 }));
      if (!found.has(id)) found.set(id, full);
    }
  };
  add(small);
  if (found.size < IDS) add(lifted(small));
  if (found.size < IDS && large) add(image);
  const seen: SeenMarker[] = [];
  for (const [id, corners] of found) {
    const refined = refineCorners(image, corners);
    if (refined) seen.push({ id, ...refined });
  }
  return seen.sort((a, b) => a.id - b.id);
}

/** Dark parts stretched: 1 % of the pixels become black, 1 % white, and the rest follows a square root. */
function lifted(image: GreyImage): GreyImage {
  const counts = new Float64Array(256);
  for (const grey of image.data) counts[grey]!++;
  const level = (share: number) => {
    let [grey, sum] = [0, 0];
    while (grey < 255 && (sum += counts[grey]!) < share * image.data.length) grey++;
    return grey;
  };
  const [black, white] = [level(0.01), level(0.99)];
  const table = Uint8Array.from({ length: 256 }, (_, grey) => {
    const share = Math.min(1, Math.max(0, (grey - black) / Math.max(1, white - black)));
    return Math.round(255 * Math.sqrt(share));
  });
  return { ...image, data: image.data.map((grey) => table[grey]!) };
}

function findQuads(cv: OpenCv, image: GreyImage): Map<number, PixelPoint[]> {
  const found = new Map<number, PixelPoint[]>();
  const mat = new cv.Mat(image.height, image.width, cv.CV_8UC1);
  const dictionary = cv.getPredefinedDictionary(DICT_4X4_50);
  const parameters = new cv.aruco_DetectorParameters();
  parameters.cornerRefinementMethod = cv.CORNER_REFINE_SUBPIX ?? 1;
  const refine = new cv.aruco_RefineParameters(10, 3, true);
  const detector = new cv.aruco_ArucoDetector(dictionary, parameters, refine);
  const corners = new cv.MatVector();
  const ids = new cv.Mat();
  try {
    mat.data.set(image.data);
    detector.detectMarkers(mat, corners, ids);
    const list = Int32Array.from(ids.data32S);
    for (let i = 0; i < corners.size(); i++) {
      const quad = corners.get(i);
      const xy = Float32Array.from(quad.data32F);
      quad.delete();
      const id = list[i]!;
      if (id >= IDS || found.has(id)) continue;
      found.set(
        id,
        [0, 1, 2, 3].map((k) => ({ x: xy[2 * k]!, y: xy[2 * k + 1]! })),
      );
    }
  } finally {
    for (const owned of [mat, dictionary, parameters, refine, detector, corners, ids]) owned.delete();
  }
  return found;
}
