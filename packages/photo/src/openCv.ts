/** The part of OpenCV this package calls. Every object it hands out lives on its own heap and must be deleted. */
export interface OpenCv {
  readonly CV_8UC1: number;
  readonly CORNER_REFINE_SUBPIX?: number;
  readonly Mat: new (rows?: number, cols?: number, type?: number) => CvMat;
  readonly MatVector: new () => CvMatVector;
  readonly aruco_ArucoDetector: new (
    dictionary: Deletable,
    parameters: Deletable,
    refine: Deletable,
  ) => CvDetector;
  readonly aruco_DetectorParameters: new () => Deletable & { cornerRefinementMethod: unknown };
  readonly aruco_RefineParameters: new (least: number, correction: number, orders: boolean) => Deletable;
  getPredefinedDictionary(name: number): CvDictionary;
}

interface Deletable {
  delete(): void;
}
export interface CvMat extends Deletable {
  readonly rows: number;
  readonly cols: number;
  readonly data: Uint8Array;
  readonly data32S: Int32Array;
  readonly data32F: Float32Array;
}
interface CvMatVector extends Deletable {
  size(): number;
  get(index: number): CvMat;
}
interface CvDetector extends Deletable {
  detectMarkers(image: CvMat, corners: CvMatVector, ids: CvMat): void;
}
interface CvDictionary extends Deletable {
  generateImageMarker(id: number, side: number, image: CvMat, border: number): void;
}

/** What the module's file exports: a promise of the functions. */
export interface OpenCvModule {
  readonly default: PromiseLike<OpenCv>;
}

/**
 * Loads OpenCV (13 MB, 0.3 to 1 s). The answer is boxed because some builds of the module are thenable:
 * returned bare from an async function, such a module never resolves.
 *
 * @param bring how to get at the module where a plain import cannot, e.g. by `require` under a test runner that
 *   wraps imported modules
 */
export async function loadOpenCv(
  bring: () => Promise<OpenCvModule> = async () => (await import('./openCvModule.ts')).openCvModule,
): Promise<{ readonly cv: OpenCv }> {
  const module = await bring();
  return new Promise((resolve, reject) => {
    module.default.then((cv) => resolve({ cv }), reject);
  });
}
