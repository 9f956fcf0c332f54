export * from './csv.ts';
export { type DxfOptions, type DxfVersion, layDxf, pieceDxf } from './dxf/cutDxf.ts';
export type { CentreMarks } from './dxf/entities.ts';
export { type Fonts, loadFonts } from './fonts.ts';
export { type PdfOptions, sheetPdf } from './pdf/sheetPdf.ts';
export * from './renderFiles.ts';
export { laySvg, pieceSvg } from './svg/cutSvg.ts';
export { pageSvg } from './svg/pageSvg.ts';
