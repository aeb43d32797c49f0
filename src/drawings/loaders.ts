import type { DrawingKind } from '../worksheet/schema/drawing-kinds.ts'
import type { Draw } from './canvas/drawing-options.ts'

/** Loads the function that draws a cell with the given inputs. */
export type DrawingLoader = (sources: Readonly<Record<string, string>>) => Promise<Draw>

/** The loader of each kind. Each kind is a separate file, so that a sheet loads only the kinds it shows. */
export const LOADERS: Readonly<Record<DrawingKind, DrawingLoader>> = {
  'set-up': async ({ upright }) =>
    upright === undefined
      ? (await import('./set-up/set-up.ts')).drawSetUp
      : (await import('./set-up/any-set-up.ts')).drawAnySetUp,
  column: () => import('./column/column.ts').then((file) => file.drawColumn),
  evenness: () => import('./evenness/evenness.ts').then((file) => file.drawEvenness),
  depth: () => import('./depth/depth.ts').then((file) => file.drawDepth),
  readings: () => import('./readings/readings.ts').then((file) => file.drawReadings),
  'depth-zone': () => import('./depth-zone/depth-zone.ts').then((file) => file.drawDepthZone),
  time: () => import('./time/time.ts').then((file) => file.drawTime),
  tiles: () => import('./tiles/tiles.ts').then((file) => file.drawTiles),
  squareness: () => import('./squareness/squareness.ts').then((file) => file.drawSquareness),
  ledger: () => import('./ledger/ledger.ts').then((file) => file.drawLedger),
  patches: () => import('./patches/patches.ts').then((file) => file.drawPatches),
  'measured-light': () => import('./measured-light/measured-light.ts').then((file) => file.drawMeasuredLight),
  'lens-shadow': () => import('./lens-shadow/lens-shadow.ts').then((file) => file.drawLensShadow),
  'over-time': () => import('./over-time/over-time.ts').then((file) => file.drawOverTime),
}
