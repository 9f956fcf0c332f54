import type { Catalogue } from '../contract.ts';
import type { Words } from '../text/words.ts';

/** The lists of the catalogue that a shop fills. */
export type ListName =
  | 'fabrics'
  | 'bindings'
  | 'magnets'
  | 'steelStrips'
  | 'fasteners'
  | 'wrapFilms'
  | 'tapes'
  | 'threads'
  | 'operations';
export const LISTS: readonly ListName[] = [
  'fabrics',
  'bindings',
  'magnets',
  'steelStrips',
  'fasteners',
  'wrapFilms',
  'tapes',
  'threads',
  'operations',
];

type ItemLabel = {
  [K in keyof Words['catalogue']['item']]: Words['catalogue']['item'][K] extends string ? K : never;
}[keyof Words['catalogue']['item']];

/** How one field of an entry is edited. */
export interface FieldSpec {
  /** Where in the entry: `pack.price`. */
  readonly at: string;
  readonly label: ItemLabel;
  readonly kind:
    | 'text'
    | 'length'
    | 'thin'
    | 'number'
    | 'percent'
    | 'money'
    | 'check'
    | 'colour'
    | 'per'
    | 'count';
}

const NAME: FieldSpec = { at: 'name', label: 'name', kind: 'text' };
const SUPPLIER: FieldSpec = { at: 'supplier', label: 'supplier', kind: 'text' };
const PRICE: FieldSpec = { at: 'pack.price', label: 'packPrice', kind: 'money' };
const PACK_LENGTH: FieldSpec = { at: 'pack.quantity', label: 'packLength', kind: 'length' };
const THICKNESS: FieldSpec = { at: 'thickness', label: 'thickness', kind: 'thin' };

export const FIELDS: Readonly<Record<ListName, readonly FieldSpec[]>> = {
  fabrics: [
    NAME,
    SUPPLIER,
    { at: 'colour', label: 'colour', kind: 'colour' },
    { at: 'selvage', label: 'selvage', kind: 'length' },
    { at: 'mass', label: 'mass', kind: 'number' },
    THICKNESS,
    { at: 'openness', label: 'openness', kind: 'percent' },
    { at: 'facesDiffer', label: 'facesDiffer', kind: 'check' },
    { at: 'oneWay', label: 'oneWay', kind: 'check' },
    { at: 'heatCut', label: 'heatCut', kind: 'check' },
  ],
  bindings: [
    NAME,
    SUPPLIER,
    { at: 'flatWidth', label: 'flatWidth', kind: 'length' },
    THICKNESS,
    { at: 'leastRadius', label: 'leastRadius', kind: 'length' },
    PACK_LENGTH,
    PRICE,
  ],
  magnets: [
    NAME,
    SUPPLIER,
    { at: 'grade', label: 'grade', kind: 'text' },
    { at: 'pack.quantity', label: 'packCount', kind: 'count' },
    PRICE,
  ],
  steelStrips: [
    NAME,
    SUPPLIER,
    { at: 'width', label: 'stripWidth', kind: 'thin' },
    THICKNESS,
    PACK_LENGTH,
    PRICE,
  ],
  fasteners: [
    NAME,
    SUPPLIER,
    { at: 'spacing', label: 'spacing', kind: 'length' },
    { at: 'beyond', label: 'beyond', kind: 'length' },
    { at: 'inset', label: 'inset', kind: 'length' },
    { at: 'face', label: 'face', kind: 'thin' },
    { at: 'fixings', label: 'fixings', kind: 'count' },
    PRICE,
  ],
  wrapFilms: [
    NAME,
    SUPPLIER,
    THICKNESS,
    { at: 'width', label: 'width', kind: 'length' },
    { at: 'margin', label: 'margin', kind: 'length' },
    PACK_LENGTH,
    PRICE,
  ],
  tapes: [NAME, SUPPLIER, THICKNESS, { at: 'width', label: 'width', kind: 'length' }, PACK_LENGTH, PRICE],
  threads: [
    NAME,
    SUPPLIER,
    { at: 'tex', label: 'tex', kind: 'number' },
    { at: 'needle', label: 'needle', kind: 'text' },
    PACK_LENGTH,
    PRICE,
  ],
  operations: [
    NAME,
    { at: 'per', label: 'per', kind: 'per' },
    { at: 'minutes', label: 'minutes', kind: 'number' },
  ],
};

/** A first entry to begin from; its sizes are common ones and are meant to be typed over. */
export const NEW_ITEM: { readonly [L in ListName]: Omit<NonNullable<Catalogue[L]>[number], 'id' | 'name'> } =
  {
    fabrics: {
      supplier: '',
      colour: '#444444',
      rolls: [{ width: 1371.6, step: 914.4, price: 0 }],
      selvage: 6,
      mass: 400,
      thickness: 0.6,
      openness: 0.05,
      facesDiffer: false,
      oneWay: false,
      heatCut: false,
    },
    bindings: {
      supplier: '',
      flatWidth: 22.225,
      thickness: 0.5,
      leastRadius: 45,
      pack: { quantity: 45_720, price: 0 },
    },
    magnets: {
      supplier: '',
      shape: { kind: 'disc', diameter: 20, thickness: 5 },
      grade: 'N42',
      pack: { quantity: 10, price: 0 },
    },
    steelStrips: { supplier: '', width: 30, thickness: 2, pack: { quantity: 1000, price: 0 } },
    fasteners: {
      kind: 'snap',
      supplier: '',
      spacing: 254,
      beyond: 19.05,
      inset: 9.5,
      face: 15,
      strength: { by: 'unknown' },
      pack: { quantity: 25, price: 0 },
      fixings: 1,
    },
    wrapFilms: {
      supplier: '',
      thickness: 0.5,
      width: 1371.6,
      margin: 6.35,
      pack: { quantity: 914.4, price: 0 },
    },
    tapes: { supplier: '', thickness: 1, width: 19, pack: { quantity: 5000, price: 0 } },
    threads: { supplier: '', tex: 90, needle: '110/18', pack: { quantity: 1_500_000, price: 0 } },
    operations: { per: 'panel', minutes: 5 },
  };

export const PERS = [
  'job',
  'opening',
  'pattern',
  'panel',
  'panelMetre',
  'cutMetre',
  'holdPoint',
  'pocket',
  'stripPoint',
  'fastenerPoint',
  'lay',
] as const;

/** Habits by how they are typed; every one of them is here, or it does not compile. */
/** Habits that are one number each and always there. */
export type PlainHabit = Exclude<keyof Catalogue['habits'], 'tapeMargin' | 'mostPocket' | 'slack'>;

export const HABITS: { readonly [K in PlainHabit]: 'length' | 'thin' | 'number' | 'percent' } = {
  tapeSigma: 'thin',
  radiusSigma: 'thin',
  patternTolerance: 'length',
  bindingOverlap: 'length',
  bindingTrim: 'length',
  stitchLength: 'thin',
  stitchInset: 'thin',
  threadRatio: 'number',
  threadWaste: 'percent',
  backTack: 'length',
  pocketSeam: 'thin',
  cutSpacing: 'thin',
  leastOffcut: 'length',
  friction: 'number',
  windMargin: 'number',
};
