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
  column: async () => (await import('./column/column.ts')).drawColumn,
  evenness: async () => (await import('./evenness/evenness.ts')).drawEvenness,
  depth: async () => (await import('./depth/depth.ts')).drawDepth,
  readings: async () => (await import('./readings/readings.ts')).drawReadings,
  'depth-zone': async () => (await import('./depth-zone/depth-zone.ts')).drawDepthZone,
  time: async () => (await import('./time/time.ts')).drawTime,
  tiles: async () => (await import('./tiles/tiles.ts')).drawTiles,
  squareness: async () => (await import('./squareness/squareness.ts')).drawSquareness,
  ledger: async () => (await import('./ledger/ledger.ts')).drawLedger,
  patches: async () => (await import('./patches/patches.ts')).drawPatches,
  'measured-light': async () => (await import('./measured-light/measured-light.ts')).drawMeasuredLight,
  'lens-shadow': async () => (await import('./lens-shadow/lens-shadow.ts')).drawLensShadow,
  'over-time': async () => (await import('./over-time/over-time.ts')).drawOverTime,
}
