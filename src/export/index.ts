// One line an exporter. The PDF writer is imported by its own path, so that the page can load
// its library only when a PDF is asked for.
export {
  cutDxf,
  dxfName,
  plateDxf,
  sheetCutDxf,
  type CutDrawing,
  type CutSheet,
  type DxfOptions,
} from './dxf/index.ts';
export { sheetDxf } from './dxf/sheet.ts';
export { lintPrintMesh } from './lint/mesh.ts';
export { stl, stlName } from './stl.ts';
export { threeMf, type PrintItem, type PrintObject, type ThreeMfOptions } from './threemf.ts';
export { svg, type SvgOptions } from './svg.ts';
export {
  DESIGN_KIND,
  readPackage,
  withManifest,
  zipPackage,
  type Manifest,
  type PackageFile,
} from './package.ts';
export { extractDesign } from './extract.ts';
